package datumpeg.analysis.report.writing;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The words of findings for who reads a tape in feet and inches: each length in millimetres is told
 * in feet, inches and sixteenths, the millimetres in brackets, as a sixteenth is coarser than what
 * a meter sees. A stack of plates keeps its sizes, and what is said for each millimetre stays.
 */
public final class FeetInWords {
  private static final Pattern LENGTH =
      Pattern.compile(
          "(?<![\\d.+] )(?<![\\d.])([-−+]?)(\\d+(?:\\.\\d+)?)((?: ± \\d+(?:\\.\\d+)?)? mm)(?![/\\w])");

  private FeetInWords() {}

  public static Findings of(Findings findings) {
    return new Findings(
        findings.job(),
        findings.jobDigest(),
        findings.stages().stream().map(FeetInWords::of).toList());
  }

  private static StageFindings of(StageFindings stage) {
    Answer answer = stage.answer();
    return new StageFindings(
        stage.stage(),
        stage.readingCount(),
        stage.outcomes().stream().map(FeetInWords::of).toList(),
        stage.points(),
        stage.levels(),
        stage.causes().stream()
            .map(
                cause ->
                    new Cause(
                        cause.kind(),
                        words(cause.sentence()),
                        words(cause.action()),
                        cause.symptoms()))
            .toList(),
        stage.notes().stream()
            .map(note -> new Note(note.kind(), words(note.text()), note.readingIds()))
            .toList(),
        stage.networks(),
        new Answer(answer.kind(), words(answer.sentence()), words(answer.first())),
        stage.placement(),
        stage.doubted().stream().map(FeetInWords::of).collect(Collectors.toSet()));
  }

  private static Outcome of(Outcome outcome) {
    return outcome.withRemedy(words(outcome.remedy())).withAside(words(outcome.aside()));
  }

  /** A text with its lengths in feet and inches. */
  public static String words(String text) {
    return Arrays.stream(text.split("(?<=;)", -1))
        .map(clause -> clause.contains("each mm") ? clause : lengths(clause))
        .collect(Collectors.joining());
  }

  private static String lengths(String clause) {
    Matcher match = LENGTH.matcher(clause);
    StringBuilder told = new StringBuilder();
    while (match.find()) {
      double metres = Double.parseDouble(match.group(2)) / 1000;
      String feet = LengthDisplay.IMPERIAL.dimension(metres).replaceFirst("^0' (?:0 (?=\\d))?", "");
      match.appendReplacement(
          told,
          Matcher.quoteReplacement(match.group(1) + feet + " (" + match.group(2) + match.group(3))
              + ")");
    }
    return match.appendTail(told).toString();
  }
}
