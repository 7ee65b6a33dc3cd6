package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class NextObservationTest {
  private static final List<PlanPoint> POINTS =
      List.of(
          new PlanPoint("A1", 0, 0),
          new PlanPoint("A2", 6, 0),
          new PlanPoint("A3", 12, 0),
          new PlanPoint("B1", 0, 9),
          new PlanPoint("B3", 12, 9));

  private static final List<LevelSetUp> SET_UPS =
      List.of(new LevelSetUp("S1", 5e-5, 8e-5), new LevelSetUp("S2", 3e-5, 3e-5));

  private static LevelReading level(String id, String setUp, String point) {
    return new LevelReading(
        setUp,
        point,
        new Observation(id, 0, 0.001, List.of(new CommonPart("mark of " + point, 0.0003))));
  }

  /** S1 reads all five points, S2 only three: two degrees of freedom. */
  private static LevelNetwork levels(List<LevelReading> further) {
    List<LevelReading> readings = new ArrayList<>();
    POINTS.forEach(point -> readings.add(level("S1 " + point.name(), "S1", point.name())));
    for (String point : List.of("A1", "A2", "B1")) {
      readings.add(level("S2 " + point, "S2", point));
    }
    readings.addAll(further);
    return new LevelNetwork(POINTS, SET_UPS, readings);
  }

  private static AdjustedLevels adjusted(LevelNetwork network) {
    return network.adjust().complete().orElseThrow();
  }

  private static Map<String, Linearised> wanted(AdjustedLevels levels) {
    Map<String, Linearised> wanted = new LinkedHashMap<>();
    levels.names().forEach(name -> wanted.put(name, levels.linearisedLevel(name)));
    return wanted;
  }

  private static Map<String, LevelReading> furtherLevels() {
    Map<String, LevelReading> further = new LinkedHashMap<>();
    SET_UPS.forEach(
        setUp ->
            POINTS.forEach(
                point ->
                    further.put(
                        point.name() + " from " + setUp.id(),
                        level("next", setUp.id(), point.name()))));
    return further;
  }

  /** Second route: adjust again with each candidate. */
  @Test
  void isTheLevelThatAdjustingAgainFindsBest() {
    LevelNetwork network = levels(List.of());
    AdjustedLevels levels = adjusted(network);
    List<NextObservation.Candidate> candidates = new ArrayList<>();
    furtherLevels()
        .forEach((name, reading) -> candidates.add(network.further(name, levels, reading)));
    NextObservation next =
        NextObservation.among(levels.fit(), wanted(levels), candidates).orElseThrow();
    assertEquals(NextMeasurement.Reason.REDUCES_WORST_POINT, next.reason());
    assertEquals(levels.level(next.worst()).standardUncertainty(), next.now(), 1e-12);
    double least = Double.POSITIVE_INFINITY;
    for (LevelReading reading : furtherLevels().values()) {
      AdjustedLevels more = adjusted(levels(List.of(reading)));
      least = Math.min(least, more.level(next.worst()).standardUncertainty());
    }
    assertEquals(least, next.then(), 1e-12);
    assertTrue(next.then() < next.now());
  }

  private static final List<String> STATIONS = List.of("1", "2", "3", "4");

  private static LineDifference bay(String from, String to) {
    return new LineDifference(from, to, Observation.independent(from + "-" + to, 0, 0.001));
  }

  private static List<NextObservation.Candidate> allBays(AdjustedLine line) {
    List<NextObservation.Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < STATIONS.size(); i++) {
      for (int j = i + 1; j < STATIONS.size(); j++) {
        String from = STATIONS.get(i);
        String to = STATIONS.get(j);
        candidates.add(
            new NextObservation.Candidate(
                from + "-" + to,
                line.linearisedDifference(from, to),
                Observation.independent("next", 0, 0.001)));
      }
    }
    return candidates;
  }

  /**
   * Three bays of 1 mm each, chained: the whole length checks all three, each by (1²)²/(1²·(1² +
   * 3·1²)) = 1/4, a bay read again itself alone, by 1/2. By hand.
   */
  @Test
  void whereNothingChecksItIsTheOneThatChecksMost() {
    AdjustedLine line =
        new LineNetwork(STATIONS, List.of(bay("1", "2"), bay("2", "3"), bay("3", "4"))).adjust();
    NextObservation next =
        NextObservation.among(
                line.fit(), Map.of("bay", line.linearisedDifference("2", "3")), allBays(line))
            .orElseThrow();
    assertEquals(NextMeasurement.Reason.MAKES_CHECKABLE, next.reason());
    assertEquals("1-4", next.name());
    assertEquals(0.001, next.now(), 1e-15);
    assertEquals(0.001 * Math.sqrt(0.75), next.then(), 1e-15);
  }

  /** Chained and closed: each bay is known to √(3/4) mm; read again, to (4/3 + 1)^−½ mm. */
  @Test
  void whereAllIsCheckedItIsTheWorstReadAgain() {
    AdjustedLine line =
        new LineNetwork(
                STATIONS, List.of(bay("1", "2"), bay("2", "3"), bay("3", "4"), bay("1", "4")))
            .adjust();
    NextObservation next =
        NextObservation.among(
                line.fit(), Map.of("bay", line.linearisedDifference("2", "3")), allBays(line))
            .orElseThrow();
    assertEquals("2-3", next.name());
    assertEquals(0.001 * Math.sqrt(0.75), next.now(), 1e-15);
    assertEquals(0.001 / Math.sqrt(4.0 / 3 + 1), next.then(), 1e-15);
  }

  @Test
  void nothingHelpsWithoutCandidatesAndNothingWantedIsRefused() {
    AdjustedLine line = new LineNetwork(STATIONS, List.of(bay("1", "2"))).adjust();
    Map<String, Linearised> wanted = Map.of("bay", line.linearisedDifference("1", "2"));
    assertTrue(NextObservation.among(line.fit(), wanted, List.of()).isEmpty());
    assertThrows(
        IllegalArgumentException.class,
        () -> NextObservation.among(line.fit(), Map.of(), List.of()));
  }
}
