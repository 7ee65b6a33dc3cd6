package datumpeg.bridge.cli;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.tell.Tellings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What was found in one sample job, for somebody who sees the program for the first time. */
final class DemoStory {
  private static final int WIDTH = 80;
  private static final String TOO_CLOSE = "Too close to call: ";
  private static final String ITEM = "      ";

  private final Job job;
  private final Findings findings;

  DemoStory(Job job, Findings findings) {
    this.job = job;
    this.findings = findings;
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(title());
    lines.addAll(new DemoPlan(job.setOut(), findings).lines());
    for (StageFindings stage : findings.stages()) {
      lines.addAll(stage(stage));
    }
    lines.addAll(putRight());
    return lines;
  }

  private String title() {
    int readings = findings.stages().stream().mapToInt(StageFindings::readingCount).sum();
    return job.identity().id().toUpperCase(Locale.ROOT)
        + "  "
        + job.identity().name()
        + ", "
        + readings
        + " readings";
  }

  private List<String> stage(StageFindings stage) {
    List<String> lines = new ArrayList<>();
    lines.add("  " + stage.stage() + ": " + headline(stage.answer()));
    for (Cause cause : stage.causes()) {
      char sign = cause.kind() == Verdict.NONCONFORMING ? 'X' : '?';
      lines.addAll(item(sign, text(cause)));
    }
    stage.notes().stream()
        .filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED)
        .forEach(note -> lines.addAll(item('!', brief(note.text()))));
    return lines;
  }

  /** What it is and what to do; that it is too close to call is said by its sign and its action. */
  private static String text(Cause cause) {
    String sentence = cause.sentence();
    if (sentence.startsWith(TOO_CLOSE)) {
      String rest = sentence.substring(TOO_CLOSE.length());
      sentence = Character.toUpperCase(rest.charAt(0)) + rest.substring(1);
    }
    return brief(sentence + (cause.action().isEmpty() ? "" : " -> " + cause.action()));
  }

  /** Without what stands in parentheses: the report says that. */
  private static String brief(String text) {
    return text.replaceAll(" \\([^()]*\\)", "");
  }

  private static List<String> item(char sign, String text) {
    return Wrapped.lines("    " + sign + " ", ITEM, text, WIDTH);
  }

  private static String headline(Answer answer) {
    return switch (answer.kind()) {
      case GO_ON, NOT_DECIDED -> answer.sentence();
      case MEASURE_AGAIN -> "MEASURE AGAIN";
      case STOP -> "STOP";
    };
  }

  /** What was out or open in one stage and conforms in a later one. */
  private List<String> putRight() {
    List<String> changes = new ArrayList<>();
    for (int earlier = 0; earlier < findings.stages().size(); earlier++) {
      List<StageFindings> later = findings.stages().subList(earlier + 1, findings.stages().size());
      findings.stages().get(earlier).outcomes().stream()
          .filter(before -> before.is(Verdict.NONCONFORMING) || before.is(Verdict.UNDECIDED))
          .forEach(before -> changes.addAll(changes(before, later)));
    }
    return changes.isEmpty()
        ? List.of()
        : item('o', "Put right: " + String.join("; ", changes) + ".");
  }

  private static List<String> changes(Outcome before, List<StageFindings> later) {
    return later.stream()
        .flatMap(stage -> stage.outcome(before.check(), before.target()).stream())
        .filter(after -> after.is(Verdict.CONFORMING))
        .limit(1)
        .map(
            after ->
                Tellings.name(before)
                    + ", "
                    + millimetres(before)
                    + " -> "
                    + millimetres(after)
                    + " mm")
        .collect(Collectors.toList());
  }

  private static String millimetres(Outcome outcome) {
    return LengthDisplay.decimal(outcome.unit().fromSi(outcome.deviation()), 1);
  }
}
