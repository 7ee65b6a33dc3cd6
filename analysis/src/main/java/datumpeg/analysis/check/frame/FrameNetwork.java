package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.AdjustedLine;
import datumpeg.analysis.adjust.CommonPart;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.slip.SlipNetwork;
import datumpeg.analysis.uncertainty.Linearised;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * All frames as one network: the feet, eaves and apexes are stations, along the building and across
 * it; spacings, clear spans, leans and plumb lines are differences between them. A lean with the
 * wrong sign contradicts the spacings at foot and eave, and the spacing at the eave follows from
 * that at the feet and the two leans: x(eave 2) − x(eave 1) = x(foot 2) − x(foot 1) + lean 2 − lean
 * 1.
 *
 * <p>A tilt θ read near θ₀ is linear in the lean L at eave height h: θ = θ₀ + (L − h·tan
 * θ₀)·cos²θ₀/h. The bow of a column is one error for all its readings in one direction.
 *
 * <p>Only readings that nothing was moved under take part. What comes of it is relied on only if
 * the readings agree with each other; else everything stands as observed.
 */
final class FrameNetwork {
  /**
   * A misfit rarer than this is no chance: adjusted, the slip behind it would be spread over
   * columns that stand right. A doubt, at 5 %, is told earlier. Our choice.
   */
  private static final double BENT = 0.001;

  private final Building building;
  private final LineNetwork network;
  private final AdjustedLine line;
  private final boolean agrees;
  private final List<Reading> readings;
  private final Map<String, List<Reading>> leans;
  private final Set<String> ids = new HashSet<>();

  private FrameNetwork(Building building, Builder from) {
    this.building = building;
    this.network = new LineNetwork(List.copyOf(from.stations.keySet()), from.differences);
    this.line = network.adjust();
    this.agrees = line.fit().test().map(test -> test.agrees(BENT)).orElse(true);
    this.readings = List.copyOf(from.readings);
    this.leans = Map.copyOf(from.leans);
    readings.forEach(reading -> ids.add(reading.id()));
  }

  /**
   * Builds and adjusts it.
   *
   * @param rows distances along the rows of frames
   * @param spans distances between the columns of one frame
   * @param leans as observed, one for each column and direction
   */
  static FrameNetwork of(
      Job job, StageReadings stage, List<Reading> rows, List<Reading> spans, List<Lean> leans) {
    Builder builder = new Builder(job, stage);
    rows.stream().filter(builder::counts).forEach(builder::spacing);
    spans.stream().filter(builder::counts).forEach(builder::span);
    leans.stream()
        .filter(lean -> lean.readings().stream().allMatch(builder::counts))
        .forEach(builder::lean);
    return new FrameNetwork(job.setOut().building(), builder);
  }

  /** Whether all of these readings take part. */
  boolean holds(List<Reading> some) {
    for (Reading reading : some) {
      if (!ids.contains(reading.id())) {
        return false;
      }
    }
    return true;
  }

  /** The readings behind a column's lean in one direction; none if it does not take part. */
  List<Reading> leanReadings(String column, Axis axis) {
    return leans.getOrDefault(column + "/" + axis.text(), List.of());
  }

  /** Whether no slip has bent the network, so that what follows from all of it can be relied on. */
  boolean agrees() {
    return agrees;
  }

  /** Distance along the building between two frames of a row, in metres. */
  Optional<Linearised> spacing(FrameRow row, int from, int to) {
    return difference(along(row.station(from)), along(row.station(to)));
  }

  /** Distance across between the columns of a frame, in metres. */
  Optional<Linearised> span(String feature, int number) {
    return difference(across(feature + ".A" + number), across(feature + ".B" + number));
  }

  /** How far an eave stands beyond its foot in one direction, in metres. */
  Optional<Linearised> leanAtEave(GridMark mark, Axis axis) {
    return difference(station("base", mark, axis), station("eave", mark, axis));
  }

  /** A further tilt of a column, with the bow that its other tilts share. */
  Observation bowed(Observation tilt, String lean, Reading like, int face) {
    double bow = ColumnPlumb.bowRadians(like, building);
    return bow == 0 ? tilt : tilt.withCommonPart(bow(lean, face, bow));
  }

  private static CommonPart bow(String lean, int face, double radians) {
    return new CommonPart("bow of " + lean, (face == 2 ? -1 : 1) * radians, Origin.FORM);
  }

  /** Observations with residuals and tests. */
  Fit fit() {
    return line.fit();
  }

  /** A lean from all readings together. */
  Optional<Lean> lean(Lean observed) {
    double scale = building.columnHeightMetres() / building.eaveHeightMetres();
    return difference(
            station("base", observed.mark(), observed.axis()),
            station("eave", observed.mark(), observed.axis()))
        .map(
            lean ->
                new Lean(
                    observed.mark(),
                    observed.axis(),
                    lean.scaled(scale),
                    0,
                    Lean.Source.FRAMES,
                    observed.readings()));
  }

  private Optional<Linearised> difference(String from, String to) {
    boolean known = line.holds(from) && line.holds(to) && line.connected(from, to);
    return known ? Optional.of(line.linearisedDifference(from, to)) : Optional.empty();
  }

  /** The readings as observed and as adjusted; tilts as the lean at eave height that they read. */
  Optional<Network> told() {
    double height = building.eaveHeightMetres();
    return readings.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Network.of(
                "the frames",
                line.fit(),
                readings,
                reading ->
                    reading.target().quantity() == MeasuredQuantity.TILT
                        ? (reading.face() == 2 ? -height : height)
                        : 1));
  }

  /**
   * Whether the kinds of readings, each of which may fit in itself, contradict each other. Where
   * they are bent everything stands as observed, so that a slip reaches only what rests on it.
   */
  Optional<AgreementTest> test(StageReadings stage) {
    return SlipNotes.ofNetwork(
        "the frames (leans, spacings and clear spans together)",
        new Slips(network),
        line.fit(),
        readings,
        stage,
        agrees() ? AgreementTest.Reach.ALL : AgreementTest.Reach.NAMED);
  }

  private static String along(String station) {
    return station + " " + Axis.ALONG.text();
  }

  private static String across(String station) {
    return station + " " + Axis.ACROSS.text();
  }

  private static String station(String feature, GridMark mark, Axis axis) {
    return feature + "." + mark.text() + " " + axis.text();
  }

  /** The network for a slip search; a further reading is chosen by the rows themselves. */
  private record Slips(LineNetwork network) implements SlipNetwork {
    @Override
    public List<Observation> observations() {
      return network.differences().stream().map(LineDifference::observation).toList();
    }

    @Override
    public Optional<Fit> fit(List<Observation> changed) {
      List<LineDifference> differences = new ArrayList<>();
      for (int i = 0; i < changed.size(); i++) {
        differences.add(network.differences().get(i).with(changed.get(i)));
      }
      return Optional.of(new LineNetwork(network.stations(), differences).adjust().fit());
    }
  }

  /** Collects stations and differences. One thread. */
  private static final class Builder {
    private final Job job;
    private final StageReadings stage;
    private final double height;

    /** By themselves: each name once, so that it is quickly found again. */
    private final Map<String, String> stations = new LinkedHashMap<>();

    private final List<LineDifference> differences = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final Map<String, List<Reading>> leans = new HashMap<>();

    Builder(Job job, StageReadings stage) {
      this.job = job;
      this.stage = stage;
      this.height = job.setOut().building().eaveHeightMetres();
    }

    boolean counts(Reading reading) {
      return !stage.anyOutdated(List.of(reading));
    }

    private String once(String station) {
      String before = stations.putIfAbsent(station, station);
      return before == null ? station : before;
    }

    private void add(Reading reading, LineDifference difference) {
      differences.add(difference);
      readings.add(reading);
    }

    void spacing(Reading reading) {
      PointName first = reading.target().first();
      PointName second = reading.target().second();
      FrameRow row = FrameRow.of(first);
      double offset = FrameRow.faceOffsetMetres(reading.target(), job.setOut());
      Observation observed = stage.observation(reading, reading.valueSi() - offset);
      observed = stage.marked(observed, first, Axis.ALONG.text(), -1);
      observed = stage.marked(observed, second, Axis.ALONG.text(), 1);
      add(
          reading,
          new LineDifference(
              once(along(row.station(FrameRow.number(first)))),
              once(along(row.station(FrameRow.number(second)))),
              observed));
    }

    void span(Reading reading) {
      PointName first = reading.target().first();
      PointName second = reading.target().second();
      Observation observed = stage.observation(reading);
      observed = stage.marked(observed, first, Axis.ACROSS.text(), -1);
      observed = stage.marked(observed, second, Axis.ACROSS.text(), 1);
      add(
          reading,
          new LineDifference(
              once(station(first.feature(), first.gridMark().orElseThrow(), Axis.ACROSS)),
              once(station(second.feature(), second.gridMark().orElseThrow(), Axis.ACROSS)),
              observed));
    }

    void lean(Lean lean) {
      leans.put(lean.target(), lean.readings());
      for (Reading reading : lean.readings()) {
        add(
            reading,
            reading.target().quantity() == MeasuredQuantity.TILT
                ? tilt(lean, reading)
                : plumbLine(lean, reading));
      }
    }

    private LineDifference tilt(Lean lean, Reading reading) {
      double tangent = lean.atColumnHeight().value() / job.setOut().building().columnHeightMetres();
      double square = 1 + tangent * tangent;
      int sign = reading.face() == 2 ? -1 : 1;
      double constant = StrictMath.atan(tangent) - tangent / square;
      Observation observed = stage.observation(reading);
      double bow = ColumnPlumb.bowRadians(reading, job.setOut().building());
      if (bow != 0) {
        observed = observed.withCommonPart(bow(lean.target(), reading.face(), bow));
      }
      return new LineDifference(
          once(station("base", lean.mark(), lean.axis())),
          once(station("eave", lean.mark(), lean.axis())),
          observed,
          sign / (height * square),
          sign * constant);
    }

    private LineDifference plumbLine(Lean lean, Reading reading) {
      PointName point = reading.target().first();
      return new LineDifference(
          once("plumb line of " + lean.target()),
          once(station(point.feature(), lean.mark(), lean.axis())),
          stage.marked(stage.observation(reading), point, lean.axis().text(), 1));
    }
  }
}
