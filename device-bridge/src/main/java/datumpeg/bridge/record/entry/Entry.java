package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;
import java.util.OptionalDouble;

/** What one row of the record says. Immutable. */
public sealed interface Entry
    permits SessionEntry,
        JobRevisionEntry,
        ReadingEntry,
        VoidEntry,
        MovedEntry,
        TableEntry,
        CaptureEntry,
        ProfileEntry,
        MeterCheckEntry,
        SignatureEntry,
        AcceptanceEntry,
        PhotoEntry {

  EntryKind kind();

  /** The body as it is stored: texts and integers only, so that it has a canonical form. */
  JsonObject body();

  /**
   * A number derived from the body and kept beside it, outside the digest, for people who query the
   * record; empty for most kinds.
   */
  default OptionalDouble number() {
    return OptionalDouble.empty();
  }
}
