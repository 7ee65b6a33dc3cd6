package datumpeg.bridge.emulate;

import datumpeg.bridge.frame.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A meter that sends the values it is given as text lines, rounded to what its dialect writes. The
 * same seed gives the same bytes. One thread.
 */
public final class EmulatedMeter {
  private static final List<String> OTHER_LINES =
      List.of(
          "BATT 87%", "Status: ready", "TEMP 11.5 C", ">", "Laser on", "Signal 0412", "Err 255");

  private final Dialect dialect;
  private final Chatter chatter;
  private final SplittableRandom random;

  /** What the meter sends besides values. */
  public enum Chatter {
    /** Nothing. */
    SILENT,
    /** Now and then a line about its battery, an echo or an error before a value. */
    TALKATIVE
  }

  public EmulatedMeter(Dialect dialect, Chatter chatter, long seed) {
    this.dialect = dialect;
    this.chatter = chatter;
    this.random = new SplittableRandom(seed);
  }

  public Dialect dialect() {
    return dialect;
  }

  /**
   * The bytes for one value, with terminator and with whatever the meter says before it.
   *
   * @param siValue metres or radians
   * @throws IllegalArgumentException if the value is not finite
   */
  public Bytes send(double siValue) {
    if (!Double.isFinite(siValue)) {
      throw new IllegalArgumentException("a meter sends finite values, given " + siValue);
    }
    StringBuilder text = new StringBuilder();
    if (chatter == Chatter.TALKATIVE && random.nextInt(3) == 0) {
      text.append(OTHER_LINES.get(random.nextInt(OTHER_LINES.size()))).append(dialect.terminator());
    }
    text.append(dialect.line(siValue)).append(dialect.terminator());
    return Bytes.of(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** The bytes for several values, one after the other. */
  public Bytes sendAll(List<Double> siValues) {
    Bytes all = Bytes.empty();
    for (double value : siValues) {
      all = all.plus(send(value));
    }
    return all;
  }

  /** The bytes cut at random places, as a slow line delivers them. */
  public List<Bytes> inPieces(Bytes bytes) {
    List<Bytes> pieces = new ArrayList<>();
    int start = 0;
    while (start < bytes.length()) {
      int end = Math.min(bytes.length(), start + 1 + random.nextInt(bytes.length()));
      pieces.add(bytes.slice(start, end));
      start = end;
    }
    return pieces;
  }
}
