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

/** The metric job: a hay shed of three bays, slab, lift and tightening. Invented. */
final class Larkrise {
  /** Of the committed files. */
  private static final long FILES = 20260302;

  private static final double ZERO_ERROR_RADIANS = StrictMath.toRadians(0.06);
  private static final String SLIPPED = "base.B1/low-base.B3/low";

  private final Job job;
  private final long seed;

  Larkrise(Job job) {
    this(job, FILES);
  }

  /** The same site and faults, measured with other errors. */
  Larkrise(Job job, long seed) {
    this.job = job;
    this.seed = seed;
  }

  /** Every file but the job file, by its name. */
  Map<String, String> files() {
    Visit arrival = arrival();
    Visit levels = levels();
    Visit lift = lift();
    Visit tightening = tightening();
    Map<String, String> files = new LinkedHashMap<>();
    files.put("arrival.capture.jsonl", capture(arrival, seed + 1));
    files.put(
        "levels.csv", new TableText(ZoneOffset.ofHours(1), "Ines").millimetres(levels.readings()));
    files.put("lift.capture.jsonl", capture(lift, seed + 2));
    files.put("tightening.capture.jsonl", capture(tightening, seed + 3));
    TruthText truth = new TruthText(job.identity().id(), planted());
    List.of(arrival, levels, lift, tightening).forEach(truth::visit);
    files.put("truth.toml", truth.text());
    return files;
  }

  private static Map<String, String> planted() {
    Map<String, String> planted = new LinkedHashMap<>();
    planted.put("slab", "a trapezium, 14 mm out of square at each corner; the diagonals agree");
    planted.put("column", "A3 leans 21 mm toward B at the lift, is plumbed before tightening");
    planted.put("bay", "A2-A3 is 18 mm long and stays so");
    planted.put("slip", "base.B1-base.B3 is taken from an edge 18 mm out: it reads 18 mm too long");
    planted.put(
        "undecided",
        "B2 leans 7.0 mm along; the tilt meter cannot tell that from the limit of 7.2 mm");
    return planted;
  }

  /** Side A 14 mm longer than planned, side B 14 mm shorter: equal diagonals, no right angle. */
  private SimulatedSite slab() {
    SimulatedSite site = SimulatedSite.asDesigned(job.setOut());
    site = Sites.shifted(site, "slab.A1", -7, 0, 0);
    site = Sites.shifted(site, "slab.A4", 7, 1, 1.5);
    site = Sites.shifted(site, "slab.B4", -7, 1, -1);
    site = Sites.shifted(site, "slab.B1", 7, -0.5, 2.5);
    site = Sites.shifted(site, "slab.@(9.0;4.5)", 0, 0, 0.5);
    double[] seatLevels = {0.3, -3.0, -1.2, 1.2, 2.0, 0.8, -2.1, -0.6};
    List<String> marks = Sites.marks(site);
    for (int i = 0; i < seatLevels.length; i++) {
      site = Sites.shifted(site, "seat." + marks.get(i), 0, 0, seatLevels[i]);
    }
    return site;
  }

  private SimulatedSite bases() {
    SimulatedSite site = slab();
    site = Sites.shifted(site, "base.A2", -5, 1, 0);
    site = Sites.shifted(site, "base.A3", 13, -1, 0);
    site = Sites.shifted(site, "base.A4", 7, 0, 0);
    site = Sites.shifted(site, "base.B2", 2, -1, 0);
    site = Sites.shifted(site, "base.B3", 0, 2, 0);
    return Sites.shifted(site, "base.B4", 1, 0, 0);
  }

  private SimulatedSite lifted() {
    SimulatedSite site = bases();
    site = Sites.bowed(site, "A1", 1.2, -1.5, 0.8, 0);
    site = Sites.leaning(site, "A2", -0.8, 1.9);
    site = Sites.bowed(site, "A3", 2.0, 21, 0, 1.1);
    site = Sites.leaning(site, "A4", -1.6, 0.7);
    site = Sites.leaning(site, "B1", 0.9, -2.2);
    site = Sites.leaning(site, "B2", 7.0, 1.1);
    site = Sites.bowed(site, "B3", -1.4, 1.6, -0.9, 0.6);
    return Sites.leaning(site, "B4", 1.8, -0.6);
  }

  private SimulatedSite tightened() {
    SimulatedSite site = lifted();
    site = Sites.leaning(site, "A1", 0.8, -1.2);
    site = Sites.leaning(site, "A2", 0.6, 1.4);
    site = Sites.bowed(site, "A3", 1.5, 1.8, 0, 1.1);
    site = Sites.leaning(site, "A4", 1.5, 0.4);
    site = Sites.leaning(site, "B2", 1.0, 0.9);
    return site;
  }

  Visit arrival() {
    List<String> slab =
        List.of(
            "slab.A1-slab.A4",
            "slab.A4-slab.B4",
            "slab.B4-slab.B1",
            "slab.B1-slab.A1",
            "slab.A1-slab.B4",
            "slab.A4-slab.B1");
    return new Visit(
            job, slab(), "arrival", "arrival", Instant.parse("2026-03-02T07:10:00Z"), seed + 11)
        .measure(MeasuredQuantity.DISTANCE, "laser", slab)
        .measure(MeasuredQuantity.DISTANCE, "laser", slab);
  }

  Visit levels() {
    List<String> points =
        job.setOut().slab().levelPoints().stream().map(point -> point.text()).toList();
    return new Visit(
            job, slab(), "levels", "arrival", Instant.parse("2026-03-02T07:40:00Z"), seed + 12)
        .measure(MeasuredQuantity.STAFF, "level", points);
  }

  Visit lift() {
    SimulatedSite site = lifted();
    Visit visit =
        new Visit(job, site, "lift", "lift", Instant.parse("2026-03-11T06:30:00Z"), seed + 13)
            .withCommonError("tilt", ZERO_ERROR_RADIANS)
            .measureOnTwoFaces("tilt", Sites.tilts(site));
    for (String spacing : Sites.spacings(site, "base")) {
      if (spacing.equals(SLIPPED)) {
        visit.measureWithSlip("laser", spacing, 0.018);
      } else {
        visit.measure(MeasuredQuantity.DISTANCE, "laser", List.of(spacing));
      }
    }
    return visit.measure(MeasuredQuantity.DISTANCE, "laser", Sites.clearSpans(site, "base"));
  }

  Visit tightening() {
    SimulatedSite site = tightened();
    return new Visit(
            job, site, "tightening", "tightening", Instant.parse("2026-03-13T06:45:00Z"), seed + 15)
        .withCommonError("tilt", ZERO_ERROR_RADIANS)
        .measureOnTwoFaces("tilt", Sites.tilts(site))
        .measure(MeasuredQuantity.DISTANCE, "laser", Sites.spacings(site, "base"))
        .measure(MeasuredQuantity.DISTANCE, "laser", Sites.spacings(site, "eave"))
        .measure(MeasuredQuantity.DISTANCE, "laser", Sites.clearSpans(site, "base"))
        .measure(MeasuredQuantity.DISTANCE, "laser", Sites.clearSpans(site, "eave"));
  }

  private String capture(Visit visit, long bytesSeed) {
    return CaptureText.of(job.identity().id(), visit, bytesSeed, dialects(visit));
  }

  private static Map<String, Dialect> dialects(Visit visit) {
    Map<String, Dialect> dialects = new LinkedHashMap<>();
    dialects.put("laser", Dialect.METRES);
    if (!visit.stage().equals("arrival")) {
      dialects.put("tilt", Dialect.DEGREES);
    }
    return dialects;
  }
}
