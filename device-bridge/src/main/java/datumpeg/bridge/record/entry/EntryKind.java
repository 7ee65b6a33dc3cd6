package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;
import java.util.Optional;
import java.util.OptionalDouble;

/** The closed set of entry kinds, each with its stored word and the way back from a stored body. */
public enum EntryKind {
  SESSION("session"),
  JOB_REVISION("job-revision"),
  READING("reading"),
  VOID("void"),
  MOVED("moved"),
  TABLE("table"),
  CAPTURE("capture"),
  PROFILE("profile"),
  METER_CHECK("meter-check"),
  SIGNATURE("signature"),
  ACCEPTANCE("acceptance"),
  PHOTO("photo");

  private final String word;

  EntryKind(String word) {
    this.word = word;
  }

  /** The word in the record's {@code kind} column. */
  public String word() {
    return word;
  }

  public static Optional<EntryKind> ofWord(String word) {
    for (EntryKind kind : values()) {
      if (kind.word.equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  /**
   * The entry whose {@link Entry#body()} and {@link Entry#number()} these are. Members a later
   * version added to the body are left aside.
   *
   * @throws datumpeg.bridge.json.JsonException if a member is missing or of another shape
   * @throws IllegalArgumentException if a value is not one this kind can have
   * @throws java.time.DateTimeException if a time is not one
   */
  public Entry decode(JsonObject body, OptionalDouble number) {
    return switch (this) {
      case SESSION -> SessionEntry.from(body);
      case JOB_REVISION -> JobRevisionEntry.from(body);
      case READING -> ReadingEntry.from(body, number);
      case VOID -> VoidEntry.from(body);
      case MOVED -> MovedEntry.from(body);
      case TABLE -> TableEntry.from(body);
      case CAPTURE -> CaptureEntry.from(body);
      case PROFILE -> ProfileEntry.from(body);
      case METER_CHECK -> MeterCheckEntry.from(body);
      case SIGNATURE -> SignatureEntry.from(body);
      case ACCEPTANCE -> AcceptanceEntry.from(body);
      case PHOTO -> PhotoEntry.from(body);
    };
  }
}
