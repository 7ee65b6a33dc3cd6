package datumpeg.analysis.reduce;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Girts;
import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.RafterEnd;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.Sections;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.job.SteelTemperatures;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** An invented job whose parts a test chooses, and readings for it. */
public final class InventedJob {
  public static final Instant AT = Instant.parse("2026-03-02T08:00:00Z");

  public double spanMetres = 9;
  public List<Double> baysMetres = List.of(6.0, 6.0, 6.0);
  public double columnHeightMetres = 3.6;
  public List<Double> platesMetres = List.of();
  public Details details = Details.NONE;
  public OptionalDouble sheetCoverMetres = OptionalDouble.empty();
  public List<PointName> levelPoints = List.of();

  /** Corners of the slab in order around it; empty = the rectangle of span and length. */
  public Map<String, PlanPoint> slabCorners = Map.of();

  public List<Opening> openings = List.of();
  public DecisionRule decision = DecisionRule.DEFAULT;
  public List<Stage> stages = Stage.STANDARD;
  public SteelTemperatures steel = SteelTemperatures.REFERENCE;
  public final Map<String, Tolerance> tolerances = new LinkedHashMap<>();
  public final Map<String, Meter> meters = new LinkedHashMap<>();
  public final Map<String, Double> pointDefinitionsMetres = new LinkedHashMap<>();
  private final List<Reading> readings = new ArrayList<>();

  public InventedJob limit(String check, double plusMinusMetres) {
    tolerances.put(
        check,
        new Tolerance(new LimitRule.Constant(-plusMinusMetres, plusMinusMetres), "invented"));
    return this;
  }

  public InventedJob plumbRatio(double ratio, double capMetres) {
    tolerances.put(
        "column-plumb",
        new Tolerance(new LimitRule.Ratio(ratio, OptionalDouble.of(capMetres)), "invented"));
    return this;
  }

  /** A meter with independent and common standard uncertainties. */
  public InventedJob meter(
      String id, MeasuredQuantity quantity, double independent, double common) {
    meters.put(
        id, new Meter(id, quantity, new MeterAccuracy(independent, common, 0, 0), "job file"));
    return this;
  }

  public Job build() {
    double length = baysMetres.stream().mapToDouble(Double::doubleValue).sum();
    Sections sections =
        new Sections(
            0.15,
            0.064,
            0.064,
            0.064,
            0.15,
            Girts.OUTSIDE,
            0,
            0,
            RafterEnd.SQUARE,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            sheetCoverMetres,
            OptionalDouble.empty());
    Building building =
        new Building(
            spanMetres,
            length,
            columnHeightMetres,
            columnHeightMetres,
            Roof.GABLE,
            StrictMath.toRadians(10),
            0,
            baysMetres,
            sections);
    Slab slab =
        new Slab(
            slabCorners.isEmpty() ? Slab.rectangle(building) : slabCorners,
            levelPoints,
            platesMetres);
    return new Job(
        new JobIdentity(
            "invented",
            "local",
            "Invented shed",
            "",
            "",
            "",
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalInt.empty()),
        new SetOut(building, slab, openings, details),
        tolerances,
        meters,
        pointDefinitionsMetres,
        decision,
        stages,
        Optional.empty(),
        steel);
  }

  public InventedJob read(String stage, MeasuredQuantity quantity, String target, double valueSi) {
    return read(stage, quantity, target, valueSi, 0, 1);
  }

  public InventedJob read(
      String stage, MeasuredQuantity quantity, String target, double valueSi, int face, int round) {
    String meter =
        meters.values().stream()
            .filter(candidate -> candidate.quantity() == quantity)
            .map(Meter::id)
            .findFirst()
            .orElse("");
    readings.add(
        new Reading(
            "r%03d".formatted(readings.size() + 1),
            stage,
            Target.parse(quantity, target),
            valueSi,
            face,
            meter,
            "session-1",
            "",
            OptionalDouble.empty(),
            round,
            AT,
            "",
            ""));
    return this;
  }

  public List<Reading> readings() {
    return List.copyOf(readings);
  }

  public StageFindings reduced(String stage) {
    return new Reduction(build(), "digest")
        .reduce(readings(), List.of())
        .stage(stage)
        .orElseThrow();
  }
}
