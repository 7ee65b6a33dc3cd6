package datumpeg.analysis.adjust;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;

/**
 * What the tilts of the set-ups' planes do to readings: each is an error that all readings of its
 * set-up share, in proportion to how far the point lies from the middle of those read. Immutable.
 */
final class LevelTilts {
  private final Map<String, PlanPoint> points = new HashMap<>();
  private final Map<String, LevelSetUp> setUps = new HashMap<>();
  private final Map<String, Middle> middles = new HashMap<>();

  LevelTilts(LevelNetwork network) {
    network.points().forEach(point -> points.put(point.name(), point));
    network.setUps().forEach(setUp -> setUps.put(setUp.id(), setUp));
    network
        .readings()
        .forEach(
            reading ->
                middles
                    .computeIfAbsent(reading.setUp(), setUp -> new Middle())
                    .add(at(reading.point())));
  }

  /** A reading's observation with the tilts of its set-up as shared errors. */
  Observation of(LevelReading reading) {
    LevelSetUp setUp = Objects.requireNonNull(setUps.get(reading.setUp()), reading.setUp());
    Middle middle = middles.getOrDefault(setUp.id(), new Middle());
    PlanPoint point = at(reading.point());
    Observation tilted = reading.observation();
    if (setUp.tiltXStandardUncertaintyRadians() > 0) {
      double effect = setUp.tiltXStandardUncertaintyRadians() * (point.xMetres() - middle.x());
      tilted = tilted.withCommonPart(new CommonPart(LevelNetwork.tiltX(setUp.id()), effect));
    }
    if (setUp.tiltYStandardUncertaintyRadians() > 0) {
      double effect = setUp.tiltYStandardUncertaintyRadians() * (point.yMetres() - middle.y());
      tilted = tilted.withCommonPart(new CommonPart(LevelNetwork.tiltY(setUp.id()), effect));
    }
    return tilted;
  }

  private PlanPoint at(String name) {
    return Objects.requireNonNull(points.get(name), name);
  }

  /** Mean place of the points read, one for each reading. */
  private static final class Middle {
    private double sumX;
    private double sumY;
    private int count;

    void add(PlanPoint point) {
      sumX += point.xMetres();
      sumY += point.yMetres();
      count++;
    }

    double x() {
      return count == 0 ? 0 : sumX / count;
    }

    double y() {
      return count == 0 ? 0 : sumY / count;
    }
  }
}
