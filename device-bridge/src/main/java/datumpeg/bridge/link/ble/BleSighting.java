package datumpeg.bridge.link.ble;

import java.util.OptionalInt;

/**
 * A meter that was heard.
 *
 * @param address six pairs of capital hexadecimal digits with colons
 * @param name what it calls itself, safe to print; empty if it does not
 * @param strengthDbm how strongly it was heard, in dBm; empty where the system does not know
 */
public record BleSighting(String address, String name, OptionalInt strengthDbm) {
  private static final int LONGEST_NAME = 64;

  public BleSighting {
    name = clean(name);
  }

  /**
   * A sighting with the strength as the system gives it.
   *
   * @param strengthDbm 127 and 0 mean that it does not know: Bluetooth Core Specification, volume
   *     4, part E, 7.7.65.2 for the first, seen with a real daemon for the second
   */
  public static BleSighting of(String address, String name, int strengthDbm) {
    boolean known = strengthDbm != 127 && strengthDbm != 0;
    return new BleSighting(
        address, name, known ? OptionalInt.of(strengthDbm) : OptionalInt.empty());
  }

  /** A device chooses its own name: nothing of it may steer the terminal. */
  public static String clean(String text) {
    String start = text.length() > LONGEST_NAME ? text.substring(0, LONGEST_NAME) : text;
    return start.replaceAll("[\\p{C}\\p{Zl}\\p{Zp}]", "?");
  }
}
