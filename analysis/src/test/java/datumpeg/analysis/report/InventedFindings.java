package datumpeg.analysis.report;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An invented hay shed, 9 m × 18 m in three bays: the slab is out of square, one column out of
 * plumb, one bay long, one level too close to call. Written by hand, not reduced from readings.
 */
public final class InventedFindings {
  public static final String RACKED =
      "The slab is racked: side B lies 12.4 mm toward end n of where it should.";
  public static final String LEANING = "Column A3 leans 14.1 mm toward B at its top.";

  private InventedFindings() {}

  public static Findings findings() {
    return new Findings(
        "larkrise-01", "3b1f0c77a0d1e2f3", List.of(arrival(), lift(), tightening()));
  }

  public static StageFindings arrival() {
    List<Outcome> outcomes = new ArrayList<>();
    outcomes.add(InventedOutcomes.sized("slab-size", "A1-A4", 18, 0.0021, "10 mm", 0.010, "D1"));
    outcomes.add(InventedOutcomes.sized("slab-size", "A4-B4", 9, -0.0012, "10 mm", 0.010, "D2"));
    outcomes.add(InventedOutcomes.sized("slab-size", "B1-B4", 18, 0.0034, "10 mm", 0.010, "D3"));
    outcomes.add(InventedOutcomes.sized("slab-size", "A1-B1", 9, 0.0004, "10 mm", 0.010, "D4"));
    outcomes.add(
        InventedOutcomes.outcome(
            "slab-diagonals",
            "slab",
            OptionalDouble.of(0),
            0.0111,
            0.0111,
            0.0024,
            InventedOutcomes.limits(0.010, false),
            0.19,
            Verdict.UNDECIDED,
            "",
            List.of("D5", "D6")));
    InventedOutcomes.square(outcomes, "A1", 0.0119, Verdict.NONCONFORMING, 0.001154);
    InventedOutcomes.square(outcomes, "A4", -0.0121, Verdict.NONCONFORMING, 0.0009);
    InventedOutcomes.square(outcomes, "B4", 0.0117, Verdict.NONCONFORMING, 0.0013);
    InventedOutcomes.square(outcomes, "B1", -0.0115, Verdict.NONCONFORMING, 0.0017);
    outcomes.add(
        InventedOutcomes.outcome(
            "slab-level",
            "slab",
            OptionalDouble.of(0),
            0.0093,
            0.0093,
            0.0031,
            InventedOutcomes.limits(0.010, false),
            0.64,
            Verdict.UNDECIDED,
            "Take the levels of B4 and of (9.0;4.5) again, from a second set-up.",
            List.of("L1", "L2", "L3", "L4", "L5")));
    outcomes.add(
        InventedOutcomes.outcome(
            "seat-level",
            "seats",
            OptionalDouble.of(0),
            0.0062,
            0.0062,
            0.0022,
            Optional.empty(),
            Double.NaN,
            null,
            "A1 none, A2 2 mm, A3 5 mm + 1 mm, A4 1 mm, B1 none, B2 2 mm, B3 2 mm, B4 5 mm.",
            List.of("L6", "L7")));
    return new StageFindings(
        "arrival",
        14,
        outcomes,
        corners(),
        levels(),
        List.of(
            new Cause(
                Verdict.NONCONFORMING,
                RACKED,
                "Do not drill by the slab's edges. Set the column lines out square from side A;"
                    + " side B's girts then overhang the slab by up to 12 mm at end n.",
                List.of(
                    "slab-square A1",
                    "slab-square A4",
                    "slab-square B4",
                    "slab-square B1",
                    "slab-diagonals slab")),
            new Cause(
                Verdict.UNDECIDED,
                "The levels of the slab spread 9.3 mm, too close to the 10 mm permitted to call.",
                "Take the levels of B4 and of (9.0;4.5) again, from a second set-up.",
                List.of("slab-level slab"))),
        List.of(
            new Note(
                Note.Kind.NOT_MEASURED,
                "The level of seat.B1 was not taken; packing there is not told.",
                List.of()),
            new Note(
                Note.Kind.ASSUMED,
                "A level not described in the job was taken as ± 3 mm (k = 2).",
                List.of("L1", "L2"))),
        new Answer(
            Answer.Kind.STOP,
            "Do not set out from this slab's edges: it is out of square.",
            "Set the column lines out square from side A, then measure their diagonals."));
  }

  public static StageFindings lift() {
    List<Outcome> outcomes = new ArrayList<>();
    double[] across = {0.0021, -0.0030, 0.0141, 0.0012, 0.0008, 0.0022, -0.0018, 0.0035};
    double[] along = {-0.0011, 0.0018, -0.0022, 0.0069, 0.0004, -0.0027, 0.0031, 0.0006};
    for (int i = 0; i < 8; i++) {
      String column = (i < 4 ? "A" : "B") + (i % 4 + 1);
      outcomes.add(InventedOutcomes.plumb(column + "/along", along[i], "T" + (2 * i)));
      outcomes.add(InventedOutcomes.plumb(column + "/across", across[i], "T" + (2 * i + 1)));
    }
    spacings(outcomes);
    return new StageFindings(
        "lift",
        30,
        outcomes,
        Map.of(),
        Map.of(),
        List.of(
            new Cause(
                Verdict.NONCONFORMING,
                LEANING,
                "Shorten the prop of A3 until its top has moved 14 mm toward A; read both faces"
                    + " again.",
                List.of("column-plumb A3/across")),
            new Cause(
                Verdict.NONCONFORMING,
                "Bay 2 to 3 is 17.8 mm long on side A and 17.2 mm on side B.",
                "Frames 3 and 4 are anchored: ask the engineer before anything is loosened.",
                List.of("frame-spacing A2-A3/base", "frame-spacing B2-B3/base")),
            new Cause(
                Verdict.UNDECIDED,
                "The lean of A4 along the wall is too close to call.",
                "Read A4 on both faces once more.",
                List.of("column-plumb A4/along"))),
        List.of(
            new Note(
                Note.Kind.SLIP_SUSPECTED,
                "The running and the chained distances to frame 4 differ by 9 mm; one of them"
                    + " hooks the other face.",
                List.of("S3", "S4"))),
        new Answer(
            Answer.Kind.STOP,
            "Stop: column A3 is out of plumb and bay 2 to 3 is long.",
            "Shorten the prop of A3 until its top has moved 14 mm toward A."));
  }

  /** A stage whose job gives no limits. */
  public static StageFindings tightening() {
    return new StageFindings(
        "tightening",
        4,
        List.of(
            InventedOutcomes.outcome(
                "clear-span",
                "3/eave",
                OptionalDouble.of(8.572),
                8.5745,
                0.0025,
                0.0021,
                Optional.empty(),
                Double.NaN,
                null,
                "",
                List.of("C1"))),
        Map.of(),
        Map.of(),
        List.of(),
        List.of(),
        new Answer(Answer.Kind.NOT_DECIDED, "Values only: the job gives no limits for them.", ""));
  }

  private static void spacings(List<Outcome> outcomes) {
    double[] deviations = {0.0012, 0.0178, -0.0042, 0.0008, 0.0172, -0.0031};
    for (int i = 0; i < 6; i++) {
      String side = i < 3 ? "A" : "B";
      int bay = i % 3 + 1;
      String target = side + bay + "-" + side + (bay + 1) + "/base";
      double nominal = bay == 2 ? 6.0 : 5.968;
      outcomes.add(
          InventedOutcomes.sized(
              "frame-spacing", target, nominal, deviations[i], "10 mm", 0.010, "S" + i));
    }
  }

  private static Map<String, PointEstimate> corners() {
    Map<String, PointEstimate> points = new LinkedHashMap<>();
    points.put("slab.A1", new PointEstimate(0, 0, 0, 0, 0));
    points.put("slab.A4", new PointEstimate(18.0021, 0, 1.4e-6, 0, 0));
    points.put("slab.B4", new PointEstimate(18.0135, 8.9988, 2.2e-6, 1.1e-6, 6e-7));
    points.put("slab.B1", new PointEstimate(0.0124, 9.0004, 1.9e-6, 1.2e-6, -3e-7));
    return points;
  }

  private static Map<String, LevelEstimate> levels() {
    Map<String, LevelEstimate> levels = new LinkedHashMap<>();
    levels.put("slab.A1", new LevelEstimate(0, 0, 0.0021, 0.0007));
    levels.put("slab.A4", new LevelEstimate(18, 0, -0.0018, 0.0007));
    levels.put("slab.B4", new LevelEstimate(18, 9, -0.0046, 0.0007));
    levels.put("slab.B1", new LevelEstimate(0, 9, 0.0003, 0.0007));
    levels.put("slab.@(9.0;4.5)", new LevelEstimate(9, 4.5, 0.0047, 0.0007));
    double[] seats = {0.0020, 0.0003, -0.0036, 0.0012, 0.0026, 0.0004, 0.0002, -0.0026};
    SetOut setOut = InventedShed.job().setOut();
    for (int i = 0; i < 8; i++) {
      String name = "seat." + (i < 4 ? "A" : "B") + (i % 4 + 1);
      PlanPoint place = setOut.position(PointName.parse(name).orElseThrow()).plan();
      levels.put(name, new LevelEstimate(place.xMetres(), place.yMetres(), seats[i], 0.0006));
    }
    return levels;
  }

  public static ReportOptions all() {
    return options(Optional.empty());
  }

  public static ReportOptions stage(String stage) {
    return options(Optional.of(stage));
  }

  public static ReportOptions options(Optional<String> stage) {
    return new ReportOptions(
        stage,
        LengthDisplay.METRIC,
        List.of(
            "local larkrise-01 0198c1 7 9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"),
        "0.1.0",
        "2026-03-03 17:40 UTC");
  }
}
