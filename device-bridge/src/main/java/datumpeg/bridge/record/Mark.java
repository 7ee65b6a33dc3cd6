package datumpeg.bridge.record;

/**
 * How far a record had grown when it was looked at: its newest row in this file.
 *
 * @param row the row's number in the file; 0 for an empty record
 * @param digest the row's own; empty for an empty record
 */
public record Mark(long row, String digest) {
  /** Of a record without rows. */
  public static final Mark START = new Mark(0, "");
}
