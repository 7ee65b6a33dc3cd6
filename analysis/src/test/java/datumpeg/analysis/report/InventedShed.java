package datumpeg.analysis.report;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Girts;
import datumpeg.analysis.building.RafterEnd;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.Sections;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The invented shed that the invented findings are about: its plan, meters and readings. */
public final class InventedShed {
  private InventedShed() {}

  public static Job job() {
    return job("Hay shed, Larkrise Farm (invented)", 3);
  }

  /** A job of six-metre bays. */
  public static Job job(String name, int bays) {
    Building building =
        new Building(
            9,
            6.0 * bays,
            3.6,
            3.6,
            Roof.GABLE,
            StrictMath.toRadians(10),
            0,
            java.util.Collections.nCopies(bays, 6.0),
            new Sections(
                0.150,
                0.064,
                0.064,
                0.064,
                0.150,
                Girts.OUTSIDE,
                0,
                0,
                RafterEnd.SQUARE,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty()));
    Slab slab = new Slab(Slab.rectangle(building), List.of(), List.of(0.001, 0.002, 0.005));
    return new Job(
        new JobIdentity(
            "larkrise-01",
            "local",
            name,
            "Larkrise",
            "Amber",
            "Stonecroft",
            Optional.of(LocalDate.of(2026, 3, 2)),
            OptionalDouble.of(StrictMath.toRadians(35)),
            OptionalInt.of(1)),
        new SetOut(building, slab, List.of()),
        Map.of(),
        meters(),
        Map.of("slab", 0.001),
        DecisionRule.DEFAULT,
        Stage.STANDARD);
  }

  private static Map<String, Meter> meters() {
    Map<String, Meter> meters = new LinkedHashMap<>();
    meters.put(
        "laser",
        new Meter(
            "laser",
            MeasuredQuantity.DISTANCE,
            MeterAccuracy.ofExpanded(0.0015, 2, 0.001),
            "job file"));
    meters.put(
        "tilt",
        new Meter(
            "tilt",
            MeasuredQuantity.TILT,
            MeterAccuracy.ofExpanded(StrictMath.toRadians(0.05), 2, StrictMath.toRadians(0.01)),
            "job file"));
    return meters;
  }

  /** Some of the readings behind the findings. */
  public static List<Reading> readings() {
    List<Reading> readings = new ArrayList<>();
    String[] targets = {
      "slab.A1-slab.A4",
      "slab.A4-slab.B4",
      "slab.B1-slab.B4",
      "slab.A1-slab.B1",
      "slab.A1-slab.B4",
      "slab.A4-slab.B1"
    };
    double[] values = {18.002, 8.999, 18.003, 9.0, 20.131, 20.120};
    for (int i = 0; i < targets.length; i++) {
      readings.add(
          new Reading(
              "D" + (i + 1),
              "arrival",
              Target.parse(MeasuredQuantity.DISTANCE, targets[i]),
              values[i],
              0,
              "laser",
              "s1",
              "",
              OptionalDouble.empty(),
              1,
              Instant.parse("2026-03-03T07:1" + i + ":00Z"),
              "Kit",
              ""));
    }
    return readings;
  }
}
