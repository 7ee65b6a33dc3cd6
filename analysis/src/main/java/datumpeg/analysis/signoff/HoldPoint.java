package datumpeg.analysis.signoff;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.OutcomeFigures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The check list of a stage, and how its hold point stands.
 *
 * <p>An item closes by conformance, by rework (it conforms in a later round), or by acceptance as
 * it is, which needs a name, a reason and the engineer's reference. What is too close to call, what
 * was moved since and what was not measured is open. A hold point closes when every item is closed
 * and someone signs; anything that changes after that opens it again.
 *
 * @param items in the order of the check list
 * @param signature the one that holds now; empty if nobody signed what stands now
 */
public record HoldPoint(
    Stage stage, State state, List<SignOffItem> items, Optional<Signature> signature) {
  private static final LengthFigures FIGURES = new LengthFigures(LengthDisplay.METRIC);

  /** How a hold point stands. */
  public enum State {
    /** The stage has none: work may go on. */
    NONE,
    /** Nothing was measured or answered at the stage yet. */
    NOT_BEGUN,
    /** An item is open. */
    OPEN,
    /** Every item is closed; nobody has signed that yet. */
    TO_SIGN,
    SIGNED;

    /** Whether work must not go past the stage. */
    public boolean holds() {
      return this == OPEN || this == TO_SIGN || this == NOT_BEGUN;
    }
  }

  public HoldPoint {
    items = List.copyOf(items);
  }

  /**
   * The hold point of a stage as it stands.
   *
   * @param findings of the stage; empty if nothing was measured
   * @param readings in force, those of other stages among them
   */
  public static HoldPoint of(
      Stage stage,
      Optional<StageFindings> findings,
      List<Reading> readings,
      List<Acceptance> acceptances,
      List<Signature> signatures) {
    List<SignOffItem> items = new ArrayList<>();
    findings.ifPresent(found -> outcomes(found, items));
    findings.ifPresent(found -> notes(found, items));
    Map<String, Reading> answers = answers(stage, readings);
    stage.questions().forEach((name, text) -> items.add(question(name, text, answers)));
    List<SignOffItem> settled =
        items.stream().map(item -> item.accepted(acceptance(stage, item, acceptances))).toList();
    String statement = statement(settled);
    Optional<Signature> signature =
        signatures.stream()
            .filter(one -> one.stage().equals(stage.id()) && one.statement().equals(statement))
            .max(Comparator.comparing(Signature::at));
    boolean begun = findings.isPresent() || !answers.isEmpty();
    return new HoldPoint(stage, state(stage, begun, settled, signature), settled, signature);
  }

  /** What one signs: every item as it stands. */
  public String statement() {
    return statement(items);
  }

  public List<SignOffItem> open() {
    return items.stream().filter(item -> !item.isClosed()).toList();
  }

  public Optional<SignOffItem> item(String key) {
    return items.stream().filter(item -> item.key().equals(key)).findFirst();
  }

  private static String statement(List<SignOffItem> items) {
    return items.stream().map(SignOffItem::statement).collect(Collectors.joining("\n"));
  }

  private static State state(
      Stage stage, boolean begun, List<SignOffItem> items, Optional<Signature> signature) {
    if (!stage.holdPoint()) {
      return State.NONE;
    }
    if (!begun) {
      return State.NOT_BEGUN;
    }
    if (items.stream().anyMatch(item -> !item.isClosed())) {
      return State.OPEN;
    }
    return signature.isPresent() ? State.SIGNED : State.TO_SIGN;
  }

  private static Optional<Acceptance> acceptance(
      Stage stage, SignOffItem item, List<Acceptance> acceptances) {
    return acceptances.stream()
        .filter(one -> one.stage().equals(stage.id()) && one.item().equals(item.key()))
        .filter(one -> one.found().equals(item.found()))
        .max(Comparator.comparing(Acceptance::at));
  }

  /** Values without limits have nothing to conform to, and hold nothing up. */
  private static void outcomes(StageFindings findings, List<SignOffItem> items) {
    for (Outcome outcome : findings.outcomes()) {
      outcome
          .verdict()
          .ifPresent(
              verdict ->
                  items.add(
                      new SignOffItem(
                          outcome.check() + " " + outcome.target(),
                          found(outcome, verdict),
                          how(outcome, verdict),
                          Optional.empty())));
    }
  }

  private static SignOffItem.How how(Outcome outcome, Verdict verdict) {
    if (outcome.stale()) {
      return SignOffItem.How.STALE;
    }
    return switch (verdict) {
      case CONFORMING -> outcome.round() > 1 ? SignOffItem.How.REWORKED : SignOffItem.How.CONFORMS;
      case UNDECIDED -> SignOffItem.How.UNDECIDED;
      case NONCONFORMING -> SignOffItem.How.NONCONFORMING;
    };
  }

  private static String found(Outcome outcome, Verdict verdict) {
    String round = outcome.round() > 1 ? ", round " + outcome.round() : "";
    return new OutcomeFigures(FIGURES, outcome.unit())
            .deviation(outcome.deviation(), outcome.expandedUncertainty())
        + ", "
        + (outcome.stale() ? "stale" : verdict.text())
        + round;
  }

  private static void notes(StageFindings findings, List<SignOffItem> items) {
    for (Note note : findings.notes()) {
      if (note.kind() == Note.Kind.NOT_MEASURED) {
        items.add(noted(note, SignOffItem.How.NOT_MEASURED));
      } else if (note.kind() == Note.Kind.SLIP_SUSPECTED) {
        items.add(noted(note, SignOffItem.How.CONTRADICTION));
      }
    }
  }

  private static SignOffItem noted(Note note, SignOffItem.How how) {
    return new SignOffItem(note.kind().text(), note.text(), how, Optional.empty());
  }

  /** The newest answer to each question of the stage. */
  private static Map<String, Reading> answers(Stage stage, List<Reading> readings) {
    return readings.stream()
        .filter(reading -> reading.stage().equals(stage.id()))
        .filter(reading -> reading.target().quantity() == MeasuredQuantity.ATTRIBUTE)
        .collect(
            Collectors.toMap(
                reading -> reading.target().question(),
                reading -> reading,
                (one, other) -> other.at().isBefore(one.at()) ? one : other));
  }

  private static SignOffItem question(String name, String text, Map<String, Reading> answers) {
    Reading answer = answers.get(name);
    String key = "question " + name;
    if (answer == null) {
      return new SignOffItem(
          key, text + " Not answered.", SignOffItem.How.NOT_ANSWERED, Optional.empty());
    }
    boolean yes = answer.valueSi() == 1;
    String found =
        text + (yes ? " Yes." : " No.") + (answer.note().isEmpty() ? "" : " " + answer.note());
    return new SignOffItem(
        key, found, yes ? SignOffItem.How.ANSWERED : SignOffItem.How.ANSWERED_NO, Optional.empty());
  }
}
