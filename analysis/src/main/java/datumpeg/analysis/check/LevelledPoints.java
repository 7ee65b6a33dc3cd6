package datumpeg.analysis.check;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.adjust.Adjustment;
import datumpeg.analysis.adjust.LevelNetwork;
import datumpeg.analysis.adjust.LevelReading;
import datumpeg.analysis.adjust.LevelSetUp;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.adjust.Undetermined;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.slip.SlipNetworks;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Points of some kinds whose levels were read, adjusted together.
 *
 * @param levels of those points that hang together; empty if none do
 * @param used the readings adjusted
 * @param notes about what hangs loose
 * @param model what was adjusted; empty if something hangs loose
 * @param test whether the readings fit together; empty where nothing checks them
 */
public record LevelledPoints(
    Optional<AdjustedLevels> levels,
    List<Reading> used,
    List<Note> notes,
    Optional<Network> network,
    Optional<LevelNetwork> model,
    Optional<AgreementTest> test) {

  /**
   * Adjusts the levels of some kinds of points.
   *
   * @param name what they are, for notes
   * @param features theirs
   */
  public static LevelledPoints of(
      String name, Set<String> features, SetOut setOut, StageReadings stage) {
    List<Reading> used =
        stage.current(
            stage.where(
                target ->
                    (target.quantity() == MeasuredQuantity.HEIGHT
                            || target.quantity() == MeasuredQuantity.STAFF)
                        && features.contains(target.first().feature())));
    if (used.isEmpty()) {
      return new LevelledPoints(
          Optional.empty(), used, List.of(), Optional.empty(), Optional.empty(), Optional.empty());
    }
    LevelNetwork network = network(used, setOut, stage);
    Adjustment<AdjustedLevels> adjustment = network.adjust();
    List<Note> notes = new ArrayList<>();
    if (adjustment instanceof Undetermined<AdjustedLevels> undetermined) {
      String reason = TargetWords.inSentence(undetermined.reason());
      notes.add(
          new Note(
              Note.Kind.UNDETERMINED,
              "Not all of " + name + " can be compared: " + reason + ".",
              List.of()));
    }
    Optional<AdjustedLevels> levels = adjustment.available();
    return new LevelledPoints(
        levels,
        used,
        notes,
        levels.map(all -> Network.of(name, all.fit(), used)),
        adjustment.complete().map(all -> network),
        levels.flatMap(
            all -> SlipNotes.ofNetwork(name, SlipNetworks.of(network), all.fit(), used, stage)));
  }

  private static LevelNetwork network(List<Reading> used, SetOut setOut, StageReadings stage) {
    Map<String, PlanPoint> points = new LinkedHashMap<>();
    Map<String, LevelSetUp> setUps = new LinkedHashMap<>();
    List<LevelReading> readings = new ArrayList<>();
    used.stream()
        .sorted(Comparator.comparing((Reading reading) -> reading.target().first()))
        .forEach(
            reading -> {
              PointName point = reading.target().first();
              Position place = setOut.position(point);
              points.putIfAbsent(
                  point.text(), new PlanPoint(point.text(), place.xMetres(), place.yMetres()));
              double tilt = stage.planeTiltRadians(reading);
              String setUp = reading.setupOrSession();
              setUps.putIfAbsent(setUp, new LevelSetUp(setUp, tilt, tilt));
              readings.add(
                  new LevelReading(
                      setUp,
                      point.text(),
                      stage.marked(stage.observation(reading, up(reading)), point, "up", 1)));
            });
    return new LevelNetwork(List.copyOf(points.values()), List.copyOf(setUps.values()), readings);
  }

  /** A staff reading counts down from the plane, a height counts up. */
  private static double up(Reading reading) {
    return reading.target().quantity() == MeasuredQuantity.STAFF
        ? -reading.valueSi()
        : reading.valueSi();
  }

  /** The readings of one point. */
  public List<Reading> readingsOf(String point) {
    return used.stream().filter(r -> r.target().first().text().equals(point)).toList();
  }
}
