package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * One value delivered by a meter or typed by a person, with all that was known of it then.
 *
 * @param id a UUID of version 7; names the reading for good
 * @param stage the stage of work
 * @param quantity what kind of value: {@code distance}, {@code tilt}, {@code attribute}, …
 * @param target what it is a reading of, as canonical text
 * @param value the value's text as received or typed
 * @param unit the unit's text as given; empty when the value carries its own
 * @param face 1 or 2 of a meter read turned end for end; 0 when faces do not apply
 * @param meter the instrument's id in the job; may be empty
 * @param setup which set-up of the instrument; may be empty
 * @param up the height of the meter above the base, as given; may be empty
 * @param round from 1: between two moves of the target
 * @param readAt when it was read, with the offset of the place
 * @param operator who read it; may be empty
 * @param note what was remarked; may be empty
 * @param link the connection it came over; may be empty
 * @param raw the bytes it was decoded from, as lower-case hexadecimal digits; may be empty
 * @param source how it came in, for example {@code enter FILE row 7}
 * @param siValue derived from value and unit: metres, radians, yes = 1 and no = 0. Not part of the
 *     body
 */
public record ReadingEntry(
    UUID id,
    String stage,
    String quantity,
    String target,
    String value,
    String unit,
    int face,
    String meter,
    String setup,
    String up,
    int round,
    OffsetDateTime readAt,
    String operator,
    String note,
    String link,
    String raw,
    String source,
    double siValue)
    implements Entry {

  public ReadingEntry {
    Texts.requireText(stage, "stage");
    Texts.requireText(quantity, "quantity");
    Texts.requireText(target, "target");
    Texts.requireText(value, "value");
    Texts.requireText(source, "source");
    Texts.requireHexBytes(raw, "raw");
    if (face < 0 || face > 2) {
      throw new IllegalArgumentException("face is " + face + "; expected 0, 1 or 2");
    }
    if (round < 1) {
      throw new IllegalArgumentException("round is " + round + "; expected 1 or more");
    }
    if (!Double.isFinite(siValue)) {
      throw new IllegalArgumentException("siValue is " + siValue + "; expected a finite number");
    }
  }

  /** A reading of round 1 without a face, whose optional texts are empty until they are set. */
  public static Builder builder(UUID id, String stage, String quantity, String target) {
    return new Builder(id, stage, quantity, target);
  }

  @Override
  public EntryKind kind() {
    return EntryKind.READING;
  }

  @Override
  public OptionalDouble number() {
    return OptionalDouble.of(siValue);
  }

  @Override
  public JsonObject body() {
    // In the order of the canonical form, which then need not sort.
    return JsonObject.builder()
        .put("face", face)
        .put("id", id.toString())
        .put("link", link)
        .put("meter", meter)
        .put("note", note)
        .put("operator", operator)
        .put("quantity", quantity)
        .put("raw", raw)
        .put("readAt", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(readAt))
        .put("round", round)
        .put("setup", setup)
        .put("source", source)
        .put("stage", stage)
        .put("target", target)
        .put("unit", unit)
        .put("up", up)
        .put("value", value)
        .build();
  }

  static ReadingEntry from(JsonObject body, OptionalDouble number) {
    return new ReadingEntry(
        UUID.fromString(body.text("id")),
        body.text("stage"),
        body.text("quantity"),
        body.text("target"),
        body.text("value"),
        body.text("unit"),
        body.smallInteger("face"),
        body.text("meter"),
        body.text("setup"),
        body.text("up"),
        body.smallInteger("round"),
        OffsetDateTime.parse(body.text("readAt")),
        body.text("operator"),
        body.text("note"),
        body.text("link"),
        body.text("raw"),
        body.text("source"),
        number.orElse(Double.NaN));
  }

  /** Collects what is known of a reading. For one thread. */
  public static final class Builder {
    private final UUID id;
    private final String stage;
    private final String quantity;
    private final String target;
    private String value = "";
    private String unit = "";
    private double siValue = Double.NaN;
    private int face;
    private String meter = "";
    private String setup = "";
    private String up = "";
    private int round = 1;
    private OffsetDateTime readAt = OffsetDateTime.MIN;
    private String operator = "";
    private String note = "";
    private String link = "";
    private String raw = "";
    private String source = "";

    private Builder(UUID id, String stage, String quantity, String target) {
      this.id = id;
      this.stage = stage;
      this.quantity = quantity;
      this.target = target;
    }

    /** The text as received, its unit as given, and what both come to in SI units. */
    public Builder value(String value, String unit, double siValue) {
      this.value = value;
      this.unit = unit;
      this.siValue = siValue;
      return this;
    }

    public Builder face(int face) {
      this.face = face;
      return this;
    }

    /** The instrument, which set-up of it and its height above the base; each may be empty. */
    public Builder meter(String meter, String setup, String up) {
      this.meter = meter;
      this.setup = setup;
      this.up = up;
      return this;
    }

    public Builder round(int round) {
      this.round = round;
      return this;
    }

    public Builder readAt(OffsetDateTime readAt) {
      this.readAt = readAt;
      return this;
    }

    public Builder operator(String operator) {
      this.operator = operator;
      return this;
    }

    public Builder note(String note) {
      this.note = note;
      return this;
    }

    /** The connection and the bytes that came over it, as lower-case hexadecimal digits. */
    public Builder link(String link, String raw) {
      this.link = link;
      this.raw = raw;
      return this;
    }

    public Builder source(String source) {
      this.source = source;
      return this;
    }

    /**
     * @throws IllegalArgumentException if value, time of reading or source was not set, or a value
     *     is out of its range
     */
    public ReadingEntry build() {
      if (readAt.equals(OffsetDateTime.MIN)) {
        throw new IllegalArgumentException("readAt was not set");
      }
      return new ReadingEntry(
          id, stage, quantity, target, value, unit, face, meter, setup, up, round, readAt, operator,
          note, link, raw, source, siValue);
    }
  }
}
