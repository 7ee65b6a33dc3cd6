package datumpeg.bridge.samples;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.simulate.SimulatedSite;
import datumpeg.bridge.emulate.Dialect;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The job in feet and inches: a workshop of two bays, slab and lift. Invented. */
final class Quarrybend {
  private static final long SEED = 20260413;

  private final Job job;

  Quarrybend(Job job) {
    this.job = job;
  }

  /** Every file that is generated, by its name. */
  Map<String, String> files() {
    TableText table = new TableText(ZoneOffset.ofHours(-6), "Odell");
    Visit slab = slabVisit();
    Visit lift = liftVisit();
    Visit plumbLine = plumbLineVisit();
    Map<String, String> files = new LinkedHashMap<>();
    files.put("slab.csv", table.feetAndInches(slab.readings()));
    files.put(
        "lift.capture.jsonl",
        CaptureText.of(job.identity().id(), lift, SEED + 1, Map.of("laser", Dialect.FEET_INCH)));
    files.put("plumb-line.csv", table.feetAndInches(plumbLine.readings()));
    TruthText truth = new TruthText(job.identity().id(), planted());
    List.of(slab, lift, plumbLine).forEach(truth::visit);
    files.put("truth.toml", truth.text());
    return files;
  }

  private static Map<String, String> planted() {
    Map<String, String> planted = new LinkedHashMap<>();
    planted.put("level", "slab corner B3 lies 14 mm low");
    planted.put("column", "B2 leans 19 mm along, toward end 1");
    return planted;
  }

  private SimulatedSite slab() {
    SimulatedSite site = SimulatedSite.asDesigned(job.setOut());
    site = Sites.shifted(site, "slab.A1", 0, 0, 0.4);
    site = Sites.shifted(site, "slab.A3", 3, 0, 0.9);
    site = Sites.shifted(site, "slab.B3", 2, 2, -14);
    site = Sites.shifted(site, "slab.B1", -1, 1, 0.8);
    site = Sites.shifted(site, "slab.@(6.096;4.572)", 0, 0, -0.6);
    double[] seatLevels = {0.5, -0.8, 1.0, 0.7, -1.1, -3.9};
    List<String> marks = Sites.marks(site);
    for (int i = 0; i < seatLevels.length; i++) {
      site = Sites.shifted(site, "seat." + marks.get(i), 0, 0, seatLevels[i]);
    }
    return site;
  }

  private SimulatedSite lifted() {
    SimulatedSite site = slab();
    site = Sites.shifted(site, "base.A2", 2, 1, 0);
    site = Sites.shifted(site, "base.A3", 1, 0, 0);
    site = Sites.shifted(site, "base.B2", -2, -1, 0);
    site = Sites.shifted(site, "base.B3", 1, 1, 0);
    site = Sites.leaning(site, "A1", 1.0, -1.4);
    site = Sites.leaning(site, "A2", -0.6, 1.7);
    site = Sites.leaning(site, "A3", 0.4, -0.9);
    site = Sites.leaning(site, "B1", -1.5, 0.8);
    site = Sites.leaning(site, "B2", -19, 1.2);
    return Sites.leaning(site, "B3", 1.1, -0.5);
  }

  Visit slabVisit() {
    List<String> slab =
        List.of(
            "slab.A1-slab.A3",
            "slab.A3-slab.B3",
            "slab.B3-slab.B1",
            "slab.B1-slab.A1",
            "slab.A1-slab.B3",
            "slab.A3-slab.B1");
    List<String> points =
        job.setOut().slab().levelPoints().stream().map(point -> point.text()).toList();
    return new Visit(
            job, slab(), "slab", "arrival", Instant.parse("2026-04-13T13:20:00Z"), SEED + 11)
        .measure(MeasuredQuantity.DISTANCE, "laser", slab)
        .measure(MeasuredQuantity.HEIGHT, "level", points);
  }

  Visit liftVisit() {
    SimulatedSite site = lifted();
    return new Visit(job, site, "lift", "lift", Instant.parse("2026-04-20T12:50:00Z"), SEED + 22)
        .measure(MeasuredQuantity.DISTANCE, "laser", Sites.spacings(site, "base"))
        .measure(MeasuredQuantity.DISTANCE, "laser", Sites.clearSpans(site, "base"));
  }

  Visit plumbLineVisit() {
    SimulatedSite site = lifted();
    return new Visit(
            job, site, "plumb-line", "lift", Instant.parse("2026-04-20T13:30:00Z"), SEED + 13)
        .measure(MeasuredQuantity.PLUMB_OFFSET, "tape", Sites.plumbOffsets(site));
  }
}
