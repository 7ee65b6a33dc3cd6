package datumpeg.desktop.source;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Girts;
import datumpeg.analysis.building.RafterEnd;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.Sections;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Invented jobs and findings for the screens' tests; every name and number is made up. */
public final class InventedJobs {
  public static final String ID = "fernhollow-03";

  private static final String SOURCE = "project specification, clause 4.2";

  private InventedJobs() {}

  /** A building of 9 m × 18 m with three bays. */
  public static Job job() {
    Building building =
        new Building(
            9,
            18,
            3.6,
            3.6,
            Roof.GABLE,
            StrictMath.toRadians(10),
            0,
            List.of(6.0, 6.0, 6.0),
            sections());
    return new Job(
        new JobIdentity(
            ID,
            "local",
            "Tool store, Fernhollow",
            "Fernhollow",
            "Blue",
            "Millgate",
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalInt.empty()),
        new SetOut(
            building,
            new Slab(Slab.rectangle(building), List.of(), List.of(0.001, 0.002)),
            List.of()),
        Map.of(),
        Map.of(),
        Map.of(),
        DecisionRule.DEFAULT,
        Stage.STANDARD);
  }

  public static JobRow row(String content) {
    return new JobRow(
        ID,
        "Tool store, Fernhollow",
        Optional.of(Instant.parse("2026-03-04T10:15:30Z")),
        37,
        content);
  }

  /** Arrival, lift and tightening, with one column moved and measured again at lift. */
  public static ReducedJob reduced() {
    return new ReducedJob(
        job(),
        new Findings(ID, "digest", List.of(arrival(), lift(2, 1.6), tightening())),
        List.of(new Findings(ID, "digest", List.of(arrival(), lift(1, 13.4)))),
        List.of());
  }

  /** A job of which nothing was measured. */
  public static ReducedJob unmeasured() {
    return new ReducedJob(job(), new Findings(ID, "digest", List.of()), List.of(), List.of());
  }

  /** A job that is worked out. */
  public static JobState workedOut(JobRow row, ReducedJob work) {
    return JobState.workedOut(row, work);
  }

  /** A job that cannot be worked out. */
  public static JobState cannot(JobRow row, String sentence) {
    return JobState.cannot(row, sentence);
  }

  public static RecordState state(ReducedJob work) {
    return state(List.of(JobState.workedOut(row("1"), work)));
  }

  public static RecordState state(List<JobState> jobs) {
    return new RecordState(
        "record.db", true, "", Optional.of(Instant.parse("2026-03-04T10:15:31Z")), jobs);
  }

  /** An outcome in millimetres, without a limit where {@code limit} is 0. */
  public static Outcome outcome(
      String check, String target, int round, double deviation, double limit, String remedy) {
    Verdict verdict =
        Math.abs(deviation) < limit - 2
            ? Verdict.CONFORMING
            : Math.abs(deviation) > limit + 2 ? Verdict.NONCONFORMING : Verdict.UNDECIDED;
    return new Outcome(
        check,
        target,
        round,
        OutcomeUnit.MILLIMETRE,
        check.equals("slab-size") ? OptionalDouble.of(18) : OptionalDouble.empty(),
        (check.equals("slab-size") ? 18 : 0) + deviation / 1000,
        deviation / 1000,
        0.0023,
        2,
        limit == 0
            ? Optional.empty()
            : Optional.of(
                new Limits(
                    OptionalDouble.of(-limit / 1000), OptionalDouble.of(limit / 1000), SOURCE)),
        limit == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                switch (verdict) {
                  case CONFORMING -> 0.9996;
                  case UNDECIDED -> 0.5218;
                  case NONCONFORMING -> 0.0004;
                }),
        limit == 0 ? Optional.empty() : Optional.of(verdict),
        false,
        remedy,
        "",
        List.of());
  }

  private static Sections sections() {
    return new Sections(
        0.150,
        0.064,
        0.064,
        0.064,
        0.150,
        Girts.OUTSIDE,
        0,
        0,
        RafterEnd.PLUMB,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static StageFindings arrival() {
    Map<String, PointEstimate> points = new LinkedHashMap<>();
    points.put("slab.A1", new PointEstimate(0, 0, 0, 0, 0));
    points.put("slab.A4", new PointEstimate(18.002, 0, 1e-6, 0, 0));
    points.put("slab.B4", new PointEstimate(17.988, 9.001, 1e-6, 1e-6, 0));
    points.put("slab.B1", new PointEstimate(-0.012, 8.999, 1e-6, 1e-6, 0));
    Map<String, LevelEstimate> levels = new LinkedHashMap<>();
    levels.put("slab.A1", new LevelEstimate(0, 0, 0.002, 0.001));
    levels.put("slab.B4", new LevelEstimate(18, 9, -0.004, 0.001));
    return new StageFindings(
        "arrival",
        14,
        List.of(
            outcome("slab-size", "A1-A4", 1, 2.1, 10, ""),
            outcome("slab-size", "B1-B4", 1, 0.4, 10, ""),
            outcome("slab-diagonals", "slab", 1, 1.2, 10, ""),
            outcome(
                "slab-square",
                "A1",
                1,
                12.4,
                8,
                "Set the column lines square inside the slab: shift line B by 12 mm toward end n."),
            outcome("slab-square", "B1", 1, -12.1, 8, ""),
            outcome("slab-level", "slab", 1, 8.3, 10, "")),
        points,
        levels,
        List.of(
            new Cause(
                Verdict.NONCONFORMING,
                "The slab is racked by 12.2 mm ± 2.3 mm; its diagonals agree.",
                "Set the column lines square inside the slab: shift line B by 12 mm toward end n.",
                List.of("slab-square A1", "slab-square B1")),
            new Cause(
                Verdict.UNDECIDED,
                "The spread of the slab's level is too close to its limit to call.",
                "Take the levels of the seats again with a second set-up.",
                List.of("slab-level slab"))),
        List.of(
            new Note(
                Note.Kind.NOT_MEASURED,
                "seat-level was not measured: no level at seat.A2.",
                List.of()),
            new Note(
                Note.Kind.SLIP_SUSPECTED,
                "slab.A1-slab.B1 reads 1.000 m short of what the others say.",
                List.of())),
        new Answer(
            Answer.Kind.STOP,
            "Do not set out from the slab edges: the slab is 12 mm out of square.",
            "Set the column lines square inside the slab."));
  }

  private static StageFindings lift(int round, double lean) {
    return new StageFindings(
        "lift",
        12,
        List.of(
            outcome(
                "column-plumb",
                "A3/across",
                round,
                lean,
                7.2,
                lean > 8 ? "Shorten the prop of A3: move its top 13 mm toward A." : ""),
            outcome("column-plumb", "A3/along", round, 1.1, 7.2, ""),
            outcome("column-plumb", "B3/across", 1, -2.5, 7.2, ""),
            outcome("frame-spacing", "A1-A2/base", 1, 3.1, 10, ""),
            outcome("frame-spacing", "A2-A3/base", 1, 14.8, 10, "")),
        Map.of(),
        Map.of(),
        lean > 8
            ? List.of(
                new Cause(
                    Verdict.NONCONFORMING,
                    "Column A3 leans 13.4 mm ± 2.3 mm toward B.",
                    "Shorten the prop of A3: move its top 13 mm toward A.",
                    List.of("column-plumb A3/across")))
            : List.of(
                new Cause(
                    Verdict.NONCONFORMING,
                    "Bay A2-A3 is 14.8 mm ± 2.3 mm long at the base.",
                    "It is anchored: ask the engineer before anything is drilled again.",
                    List.of("frame-spacing A2-A3/base"))),
        List.of(),
        new Answer(
            Answer.Kind.STOP,
            "Do not tighten: one bay is 15 mm long.",
            "Ask the engineer about bay A2-A3."));
  }

  private static StageFindings tightening() {
    return new StageFindings(
        "tightening",
        3,
        List.of(
            outcome("column-plumb", "A3/across", 2, 2.4, 7.2, ""),
            outcome("clear-span", "3/eave", 1, 4.0, 0, "")),
        Map.of(),
        Map.of(),
        List.of(),
        List.of(),
        new Answer(Answer.Kind.GO_ON, "Portal 3 is within its limits.", ""));
  }
}
