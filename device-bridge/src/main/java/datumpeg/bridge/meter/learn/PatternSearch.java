package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.LinePattern.DecimalMark;
import datumpeg.bridge.frame.LineShape;
import datumpeg.bridge.frame.LineText;
import datumpeg.bridge.frame.TextLineFramer;
import datumpeg.bridge.meter.MeterLanguage.PatternLines;
import datumpeg.bridge.meter.MeterProfile;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Meters whose lines have one shape, with several numbers or a word for the direction. */
final class PatternSearch {
  /** Only the last lines of a reading can be what the display shows. */
  private static final int MOST_LINES = 8;

  /** Longer lines of an unknown meter are not looked into. */
  private static final int MOST_PIECES = 80;

  /** Of decimals, one number in two is rounded up: none of six, one time in 64. */
  private static final int ENOUGH_ROUNDED_DOWN = 6;

  private PatternSearch() {}

  /**
   * By commas as decimal marks where points explain nothing: commas also part fields. Where both
   * explain the readings, {@code 26088,2} may be one number or two: both are proposed, until so
   * many readings were never rounded up that what follows the comma is taken as a field of its own.
   */
  static List<Proposal> find(List<Shown> all) {
    List<Proposal> found = find(all, DecimalMark.POINT);
    if (found.isEmpty() || all.size() < ENOUGH_ROUNDED_DOWN) {
      found.addAll(find(all, DecimalMark.COMMA));
    }
    return found;
  }

  private static List<Proposal> find(List<Shown> all, DecimalMark mark) {
    List<Proposal> found = new ArrayList<>();
    for (List<List<LinePiece>> alike : alike(TextSearch.lines(all), mark)) {
      for (int value = 0; value < alike.get(0).size(); value++) {
        PatternDraft draft = new PatternDraft(alike, value, mark);
        if (draft.isNumber()) {
          add(draft, all, found);
        }
      }
    }
    return found;
  }

  private static void add(PatternDraft draft, List<Shown> all, List<Proposal> found) {
    List<Displayed> displayed = all.stream().map(Shown::displayed).toList();
    Optional<PatternDraft.Direction> direction = draft.direction(displayed);
    List<Scale> scales =
        direction.isPresent()
            ? Scale.fittingSizes(draft.numbers(), displayed)
            : Scale.fitting(draft.numbers(), displayed);
    for (Scale scale : scales) {
      draft
          .shape(direction)
          .map(shape -> language(draft, shape, scale, direction))
          .map(language -> Fitting.profile(language, scale.sign(), scale.zero()))
          .filter(profile -> Fitting.fits(profile, all))
          .ifPresent(profile -> found.add(new Proposal(profile, words(profile, scale))));
    }
  }

  private static PatternLines language(
      PatternDraft draft,
      LineShape shape,
      Scale scale,
      Optional<PatternDraft.Direction> direction) {
    return new PatternLines(
        TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES,
        new LinePattern(
            shape,
            scale.unit(),
            draft.mark(),
            scale.exponent(),
            direction.map(PatternDraft.Direction::minus).orElse(List.of()),
            direction.map(PatternDraft.Direction::plus).orElse(List.of())));
  }

  private static String words(MeterProfile profile, Scale scale) {
    LinePattern pattern = ((PatternLines) profile.language()).pattern();
    return "lines like \""
        + pattern.shape().text()
        + "\", {value} in "
        + (scale.exponent() == 0 ? "" : "10^" + scale.exponent() + " ")
        + scale.unit().symbol()
        + TextSearch.conventions(scale.sign(), scale.zero());
  }

  /** Lines of one shape, one of each reading; as many groups as there are shapes in all of them. */
  private static List<List<List<LinePiece>>> alike(List<List<Bytes>> lines, DecimalMark mark) {
    Map<String, List<List<LinePiece>>> byShape = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      List<Bytes> ofReading = lines.get(i);
      for (Bytes line :
          ofReading.subList(Math.max(0, ofReading.size() - MOST_LINES), ofReading.size())) {
        List<LinePiece> pieces = LinePiece.cut(LineText.of(line).strip(), mark);
        List<List<LinePiece>> group =
            byShape.computeIfAbsent(PatternDraft.kinds(pieces), shape -> new ArrayList<>());
        if (group.size() == i) {
          group.add(pieces);
        } else if (group.size() == i + 1) {
          group.set(i, pieces);
        }
      }
    }
    return byShape.values().stream()
        .filter(group -> group.size() == lines.size() && group.get(0).size() <= MOST_PIECES)
        .toList();
  }
}
