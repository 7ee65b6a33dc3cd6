package datumpeg.analysis.job;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Stage;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One building at one site, as the job file describes it.
 *
 * @param setOut the plan and the dimensions that follow from it
 * @param tolerances by check
 * @param meters by the user's name for them
 * @param pointDefinitionsMetres how well a feature's points are defined: standard uncertainties
 * @param stages in the order of the work, the standard ones and the job's own
 * @param props how the props stand, if the job says so
 * @param steel how warm the steel was
 */
public record Job(
    JobIdentity identity,
    SetOut setOut,
    Map<String, Tolerance> tolerances,
    Map<String, Meter> meters,
    Map<String, Double> pointDefinitionsMetres,
    DecisionRule decision,
    List<Stage> stages,
    Optional<PropGeometry> props,
    SteelTemperatures steel) {

  /** A job that says neither how its props stand nor how warm its steel was. */
  public Job(
      JobIdentity identity,
      SetOut setOut,
      Map<String, Tolerance> tolerances,
      Map<String, Meter> meters,
      Map<String, Double> pointDefinitionsMetres,
      DecisionRule decision,
      List<Stage> stages) {
    this(
        identity,
        setOut,
        tolerances,
        meters,
        pointDefinitionsMetres,
        decision,
        stages,
        Optional.empty(),
        SteelTemperatures.UNKNOWN);
  }

  public Job {
    tolerances = Collections.unmodifiableMap(new LinkedHashMap<>(tolerances));
    meters = Collections.unmodifiableMap(new LinkedHashMap<>(meters));
    pointDefinitionsMetres =
        Collections.unmodifiableMap(new LinkedHashMap<>(pointDefinitionsMetres));
    stages = List.copyOf(stages);
  }

  public Optional<Tolerance> tolerance(String check) {
    return Optional.ofNullable(tolerances.get(check));
  }

  /** The same job with further meters; what it describes itself stays as it is. */
  public Job withMeters(Map<String, Meter> further) {
    Map<String, Meter> all = new LinkedHashMap<>(further);
    all.putAll(meters);
    return new Job(
        identity, setOut, tolerances, all, pointDefinitionsMetres, decision, stages, props, steel);
  }

  /** The meter as the job describes it, else what is assumed of one nobody described. */
  public Meter meter(String id, MeasuredQuantity quantity) {
    Meter known = meters.get(id);
    return known != null ? known : Meter.assumed(id, quantity);
  }

  /** Standard uncertainty of a point's own definition; 0 where the job says nothing. */
  public double pointDefinitionMetres(PointName point) {
    return pointDefinitionsMetres.getOrDefault(point.feature(), 0.0);
  }

  public Optional<Stage> stage(String id) {
    return stages.stream().filter(stage -> stage.id().equals(id)).findFirst();
  }
}
