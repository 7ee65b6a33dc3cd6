package datumpeg.bridge.samples;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.Unit;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Readings as the rows of a table that a person would have typed. */
final class TableText {
  private static final String HEADER = "stage,quantity,target,value,unit,at,meter,operator\n";
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssxxx", Locale.ROOT);
  private static final int SIXTEENTHS = 16;

  private final ZoneOffset offset;
  private final String operator;

  TableText(ZoneOffset offset, String operator) {
    this.offset = offset;
    this.operator = operator;
  }

  /** Lengths in millimetres with one decimal. */
  String millimetres(List<Reading> readings) {
    StringBuilder text = new StringBuilder(HEADER);
    for (Reading reading : readings) {
      double value = Unit.MILLIMETRE.fromSi(reading.valueSi());
      append(text, reading, String.format(Locale.ROOT, "%.1f", value), "mm");
    }
    return text.toString();
  }

  /** Distances in feet, inches and sixteenths; heights and offsets in inches and sixteenths. */
  String feetAndInches(List<Reading> readings) {
    StringBuilder text = new StringBuilder(HEADER);
    for (Reading reading : readings) {
      long parts = Math.round(Unit.INCH.fromSi(reading.valueSi()) * SIXTEENTHS);
      if (reading.target().quantity() == MeasuredQuantity.DISTANCE) {
        long perFoot = 12 * SIXTEENTHS;
        append(text, reading, parts / perFoot + "-" + inches(parts % perFoot), "ft-in");
      } else {
        append(text, reading, (parts < 0 ? "-" : "") + inches(Math.abs(parts)) + " in", "");
      }
    }
    return text.toString();
  }

  private static String inches(long parts) {
    long numerator = parts % SIXTEENTHS;
    long denominator = SIXTEENTHS;
    while (numerator != 0 && numerator % 2 == 0) {
      numerator /= 2;
      denominator /= 2;
    }
    String whole = Long.toString(parts / SIXTEENTHS);
    return numerator == 0 ? whole : whole + " " + numerator + "/" + denominator;
  }

  private void append(StringBuilder text, Reading reading, String value, String unit) {
    text.append(
        String.join(
            ",",
            reading.stage(),
            reading.target().quantity().text(),
            reading.target().text(),
            value,
            unit,
            TIME.format(reading.at().atOffset(offset)),
            reading.meter(),
            operator));
    text.append('\n');
  }
}
