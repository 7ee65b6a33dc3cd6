package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireKnown;
import static java.util.stream.Collectors.toCollection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Heights read from one or more set-ups of a level. Each set-up has a free height of its own, so a
 * zero error common to all its readings drops out; its tilt does not, and enters as two shared
 * errors with effects tilt·(x - mean x) and tilt·(y - mean y) about the points it read.
 *
 * @param points where the points lie in plan
 * @param setUps distinct ids
 * @param readings with distinct observation ids
 */
public record LevelNetwork(
    List<PlanPoint> points, List<LevelSetUp> setUps, List<LevelReading> readings) {
  private static final String POINT = "level of ";
  static final String SET_UP = "plane of ";

  public LevelNetwork {
    points = List.copyOf(points);
    setUps = List.copyOf(setUps);
    readings = List.copyOf(readings);
    requireDistinct("level points", points, PlanPoint::name);
    requireDistinct("level set-ups", setUps, LevelSetUp::id);
    Set<String> names =
        points.stream().map(PlanPoint::name).collect(toCollection(LinkedHashSet::new));
    Set<String> ids = setUps.stream().map(LevelSetUp::id).collect(toCollection(LinkedHashSet::new));
    requireDistinct("level readings", readings, reading -> reading.observation().id());
    for (LevelReading reading : readings) {
      String id = reading.observation().id();
      requireKnown("level reading", id, reading.point(), names);
      requireKnown("level reading", id, reading.setUp(), ids);
    }
  }

  /** Adjusts all readings; undetermined if set-ups share no point or a point was not read. */
  public Adjustment<AdjustedLevels> adjust() {
    List<List<String>> parts = parts();
    List<String> body =
        parts.stream()
            .filter(this::read)
            .reduce((a, b) -> b.size() > a.size() ? b : a)
            .orElse(List.of());
    if (!body.isEmpty() && parts.size() == 1) {
      return new Adjusted<>(connected());
    }
    List<String> loose =
        points.stream().map(PlanPoint::name).filter(name -> !body.contains(name)).toList();
    return new Undetermined<>(loose, reason(loose), List.of(), part(body));
  }

  private boolean read(List<String> names) {
    return readings.stream().anyMatch(reading -> names.contains(reading.point()));
  }

  private String reason(List<String> loose) {
    return points.isEmpty()
        ? "there is no point to be levelled"
        : "no set-up connects "
            + String.join(", ", loose)
            + " with the other points; read a point of each part from one set-up";
  }

  /** Names of points that hang together through set-ups. */
  private List<List<String>> parts() {
    List<String> nodes = new ArrayList<>();
    points.forEach(point -> nodes.add(POINT + point.name()));
    setUps.forEach(setUp -> nodes.add(SET_UP + setUp.id()));
    Components components = new Components(nodes);
    readings.forEach(r -> components.join(POINT + r.point(), SET_UP + r.setUp()));
    return components.groups().stream()
        .map(
            group ->
                group.stream()
                    .filter(node -> node.startsWith(POINT))
                    .map(node -> node.substring(POINT.length()))
                    .toList())
        .filter(group -> !group.isEmpty())
        .toList();
  }

  private Optional<AdjustedLevels> part(List<String> names) {
    List<LevelReading> kept = readings.stream().filter(r -> names.contains(r.point())).toList();
    return kept.isEmpty()
        ? Optional.empty()
        : new LevelNetwork(
                points.stream().filter(point -> names.contains(point.name())).toList(),
                setUps,
                kept)
            .adjust()
            .available();
  }

  private AdjustedLevels connected() {
    String zero = POINT + points.get(0).name();
    List<LevelSetUp> used =
        setUps.stream()
            .filter(s -> readings.stream().anyMatch(r -> r.setUp().equals(s.id())))
            .toList();
    List<String> unknowns = new ArrayList<>();
    points.stream().skip(1).forEach(point -> unknowns.add(POINT + point.name()));
    used.forEach(setUp -> unknowns.add(SET_UP + setUp.id()));
    LevelTilts tilts = new LevelTilts(this);
    List<ObservationEquation> equations = new ArrayList<>();
    for (LevelReading reading : readings) {
      Map<String, Double> coefficients = new LinkedHashMap<>();
      if (!zero.equals(POINT + reading.point())) {
        coefficients.put(POINT + reading.point(), 1.0);
      }
      coefficients.put(SET_UP + reading.setUp(), 1.0);
      equations.add(new ObservationEquation(tilts.of(reading), coefficients, 0));
    }
    Fit fit =
        LeastSquares.adjust(new LinearModel(unknowns, equations))
            .complete()
            .orElseThrow(() -> new AssertionError("connected set-ups are always determined"));
    return new AdjustedLevels(points, POINT, tilts, fit);
  }

  /**
   * A further reading of one of the levelled points from one of the set-ups in use.
   *
   * @param levels what this network came to
   */
  public NextObservation.Candidate further(
      String name, AdjustedLevels levels, LevelReading reading) {
    return new NextObservation.Candidate(
        name, levels.read(reading.point(), reading.setUp()), levels.tilted(reading));
  }

  /** Name of the shared error that is a set-up's tilt along x; see {@link Fit#commonEffect}. */
  public static String tiltX(String setUp) {
    return "tilt along x of set-up " + setUp;
  }

  /** Name of the shared error that is a set-up's tilt along y. */
  public static String tiltY(String setUp) {
    return "tilt along y of set-up " + setUp;
  }
}
