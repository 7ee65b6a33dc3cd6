package datumpeg.bridge.record;

import java.util.Optional;

/**
 * One thing that is wrong with the record.
 *
 * @param origin the chain, as it stands in the row; empty when the trouble is the whole file's
 * @param firstSequence the row's number in its chain, or the first of several that are missing; 0
 *     when the trouble is the whole file's
 * @param lastSequence the same number, or the last of several that are missing
 * @param row the row as it now stands; empty when it is missing
 * @param sentence all of it in words
 */
public record Finding(
    Trouble trouble,
    String origin,
    long firstSequence,
    long lastSequence,
    Optional<Row> row,
    String sentence) {

  /** What kind of trouble. */
  public enum Trouble {
    /** A row is not what it was when it was stored. */
    ALTERED,
    /** Rows are gone. */
    MISSING,
    /** A row stands at another place than where it was stored. */
    REORDERED,
    /** The number beside a reading is not what its text comes to. */
    NUMBER_DIFFERS,
    /** The file itself is damaged. */
    DAMAGED_FILE
  }

  /** A row's columns as text, since nothing can be taken for granted of an altered row. */
  public record Row(long rowId, String organisation, String job, String kind, String at) {}
}
