package datumpeg.bridge.frame.nmea;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.frame.LineText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads the transducer measurement (XDR) of a sentence: groups of type, value, unit and name. A
 * sentence with a wrong checksum is not a reading, one without a checksum neither. Immutable.
 *
 * <p>Types: A = angle in D(egrees), D = linear displacement in M(etres); NMEA 0183 as told in the
 * documentation of gpsd and of OpenCPN (nmea.xdr.v4.11).
 */
public final class TransducerDecoding {
  private static final int GROUP = 4;

  private final String name;

  /**
   * @param name of the transducer whose value is wanted; empty for the only length or angle
   */
  public TransducerDecoding(String name) {
    this.name = name;
  }

  /** What the frame is; total. */
  public Decoded decode(Bytes frame) {
    Optional<Sentence> sentence = Sentence.of(LineText.of(frame));
    if (sentence.isEmpty()) {
      return new NotAReading(Reason.UNREADABLE, "it is no NMEA sentence");
    }
    if (sentence.get().checksum() != Sentence.Checksum.RIGHT) {
      return new NotAReading(
          Reason.MALFORMED,
          sentence.get().checksum() == Sentence.Checksum.ABSENT
              ? "it has no checksum"
              : "its checksum is wrong");
    }
    if (!sentence.get().kind().equals("XDR")) {
      return new NotAReading(
          Reason.STATUS, "it is a sentence " + sentence.get().kind() + ", not XDR");
    }
    return decode(sentence.get().fields());
  }

  private Decoded decode(List<String> fields) {
    List<Decoded> found = new ArrayList<>();
    for (int start = 0; start + GROUP <= fields.size(); start += GROUP) {
      boolean named = name.isEmpty() || fields.get(start + 3).equals(name);
      Optional<Unit> unit = unit(fields.get(start), fields.get(start + 2));
      if (named && unit.isPresent()) {
        found.add(value(fields.get(start + 1), unit.get()));
      }
    }
    return switch (found.size()) {
      case 0 ->
          new NotAReading(
              Reason.NO_NUMBER,
              name.isEmpty()
                  ? "it has no length and no angle"
                  : "it has no length or angle of a transducer named " + name);
      case 1 -> found.get(0);
      default ->
          new NotAReading(
              Reason.AMBIGUOUS,
              "it has " + found.size() + " lengths or angles that could be meant");
    };
  }

  private static Optional<Unit> unit(String type, String unit) {
    return switch (type + unit) {
      case "AD" -> Optional.of(Unit.DEGREE);
      case "DM" -> Optional.of(Unit.METRE);
      default -> Optional.empty();
    };
  }

  private static Decoded value(String text, Unit unit) {
    if (!text.matches("[+-]?[0-9]{1,15}(\\.[0-9]{0,15})?")) {
      return new NotAReading(Reason.MALFORMED, "'" + text + "' is not a number");
    }
    return new Measured(text, unit, unit.toSi(Double.parseDouble(text)) + 0.0);
  }
}
