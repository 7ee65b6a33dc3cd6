package datumpeg.bridge.meter.learn;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.LineText;
import datumpeg.bridge.frame.TextLineFramer;
import datumpeg.bridge.meter.MeterLanguage;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Meters that speak the general text line or NMEA 0183. */
final class TextSearch {
  private static final int LINE_BYTES = TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES;

  private TextSearch() {}

  static List<Proposal> find(List<Shown> all) {
    Displayed first = all.get(0).displayed();
    List<Proposal> found = new ArrayList<>();
    for (Unit unit : Scale.units(first.unit())) {
      TextLines language = new TextLines(LINE_BYTES, unit);
      // A line that names its unit reads alike whatever a line without one would mean.
      if (found.isEmpty()) {
        add(language, all, "lines of text with one value, in " + unit.symbol(), found);
      }
    }
    for (String transducer : transducers(all)) {
      add(
          new TransducerSentences(LINE_BYTES, transducer),
          all,
          "NMEA 0183 sentences" + (transducer.isEmpty() ? "" : ", transducer " + transducer),
          found);
    }
    return found;
  }

  private static void add(
      MeterLanguage language, List<Shown> all, String words, List<Proposal> found) {
    for (AngleZero zero : zeros(all.get(0).displayed())) {
      for (Sign sign : Sign.values()) {
        MeterProfile profile = Fitting.profile(language, sign, zero);
        if (Fitting.fits(profile, all)) {
          found.add(new Proposal(profile, words + conventions(sign, zero)));
        }
      }
    }
  }

  static List<AngleZero> zeros(Displayed displayed) {
    return displayed.dimension() == Dimension.ANGLE
        ? List.of(AngleZero.values())
        : List.of(AngleZero.PLUMB);
  }

  static String conventions(Sign sign, AngleZero zero) {
    return (zero == AngleZero.LEVEL ? ", 90° when plumb" : "")
        + (sign == Sign.REVERSED ? ", sign reversed" : "");
  }

  /** The names of transducers in the sentences, or "" where one is enough. */
  private static List<String> transducers(List<Shown> all) {
    Set<String> names = new TreeSet<>();
    boolean any = false;
    for (List<Bytes> lines : lines(all)) {
      for (Bytes line : lines) {
        String[] fields = LineText.of(line).split("[,*]", -1);
        if (fields[0].startsWith("$") && fields[0].endsWith("XDR")) {
          any = true;
          for (int i = 4; i < fields.length; i += 4) {
            names.add(fields[i]);
          }
        }
      }
    }
    List<String> candidates = new ArrayList<>();
    if (any && names.size() <= 1) {
      candidates.add("");
    } else if (names.size() <= 32) {
      names.remove("");
      candidates.addAll(names);
    }
    return candidates;
  }

  /** The lines that were complete at each reading. */
  static List<List<Bytes>> lines(List<Shown> all) {
    TextLineFramer framer = new TextLineFramer(LINE_BYTES);
    List<List<Bytes>> lines = new ArrayList<>();
    for (Shown shown : all) {
      List<Bytes> ofReading = new ArrayList<>();
      shown.pieces().forEach(piece -> ofReading.addAll(framer.accept(piece.bytes())));
      lines.add(ofReading);
    }
    return lines;
  }
}
