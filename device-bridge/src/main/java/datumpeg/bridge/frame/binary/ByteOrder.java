package datumpeg.bridge.frame.binary;

import java.util.Locale;

/** Which byte of a number comes first. */
public enum ByteOrder {
  /** The least significant. */
  LITTLE,
  /** The most significant. */
  BIG;

  /** How profiles name it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
