package datumpeg.desktop.source;

import datumpeg.analysis.conform.Outcome;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Many invented jobs, one a day, of two crews in turn: Amber with the meter tilt-1, Blue with
 * tilt-2. Two columns' plumb each, within ±8 mm.
 */
public final class InventedCrews {
  private static final Instant START = Instant.parse("2026-03-02T09:00:00Z");

  private InventedCrews() {}

  public static RecordState state(int jobs) {
    return state(jobs, -1);
  }

  /** The eighteenth job leans far more than all others. */
  public static RecordState withAnOddJob(int jobs) {
    return state(jobs, 17);
  }

  private static RecordState state(int count, int odd) {
    List<JobState> jobs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      jobs.add(job(i, i == odd ? 25 : 0));
    }
    return InventedJobs.state(jobs);
  }

  private static Instant at(int number) {
    return START.plus(number, ChronoUnit.DAYS);
  }

  private static JobState job(int number, double more) {
    JobRow row = new JobRow("job-" + number, "Shed " + number, Optional.of(at(number)), 2, "1");
    boolean amber = number % 2 == 0;
    JobOverview overview =
        new JobOverview(
            number % 3 == 0 ? "Fernhollow" : "Aldermoor",
            amber ? "Amber" : "Blue",
            number % 4 < 2 ? "Millgate" : "Stonecroft",
            Optional.empty(),
            List.of(),
            "");
    double wave = 2.4 * Math.sin(number * 2.1) + (amber ? 0 : 1.5) + more;
    String meter = amber ? "tilt-1" : "tilt-2";
    return new JobState(
        row,
        Optional.of(overview),
        Optional.empty(),
        "",
        true,
        Optional.of(
            List.of(
                kept(number, meter, "A2/across", wave),
                kept(number, meter, "A2/along", wave * 0.6 - 1))));
  }

  private static KeptOutcome kept(
      int number, String meter, String target, double deviationMillimetres) {
    Outcome outcome = InventedJobs.outcome("column-plumb", target, 1, deviationMillimetres, 8, "");
    return new KeptOutcome("lift", outcome, at(number), List.of(meter));
  }
}
