package datumpeg.desktop.compare;

import java.util.List;
import java.util.stream.DoubleStream;

/** What the one axis of all strips goes from and to, in the unit shown. */
record StripScale(double lowest, double highest) {
  private static final double ROOM_AT_EACH_END = 0.06;
  private static final double LEAST_WIDTH = 0.1;

  /** Wide enough for every outcome, every interval and zero. */
  static StripScale of(List<GroupStrip> strips) {
    double low = strips.isEmpty() ? -1 : all(strips).min().orElse(-1);
    double high = strips.isEmpty() ? 1 : all(strips).max().orElse(1);
    double room = Math.max(LEAST_WIDTH, high - low) * ROOM_AT_EACH_END;
    return new StripScale(low - room, high + room);
  }

  private static DoubleStream all(List<GroupStrip> strips) {
    return strips.stream()
        .flatMapToDouble(
            strip ->
                DoubleStream.concat(
                    strip.values().stream().mapToDouble(value -> value),
                    DoubleStream.of(
                        0,
                        strip.mean() - strip.halfWidth().orElse(0),
                        strip.mean() + strip.halfWidth().orElse(0))));
  }

  /** How far along the axis a value is, from 0 to 1. */
  double part(double value) {
    return (value - lowest) / (highest - lowest);
  }
}
