package datumpeg.analysis.broken;

import datumpeg.bridge.broken.HoldsEverything;
import java.nio.file.Path;
import java.time.Instant;

/** Breaks the walls around the analysis. */
public final class Worldly {
  public Path file() {
    return Path.of("%s-%s".formatted(HoldsEverything.class.getName(), Instant.now()));
  }

  public double rise(double pitchRadians) {
    return Math.sin(pitchRadians);
  }
}
