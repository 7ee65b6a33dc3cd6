package datumpeg.analysis.signoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.signoff.HoldPoint.State;
import datumpeg.analysis.signoff.SignOffItem.How;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class HoldPointTest {
  private static final Instant AT = Instant.parse("2026-03-02T08:00:00Z");
  private static final Stage LIFT =
      new Stage("lift", "plumbed", List.of("column-plumb"), Map.of(), true);
  private static final Stage ASKING =
      new Stage("lift", "plumbed", List.of(), Map.of("props", "Are the props set?"), true);

  private final List<Acceptance> acceptances = new ArrayList<>();
  private final List<Signature> signatures = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private List<Reading> readings = List.of();

  private static Outcome outcome(Verdict verdict, int round, boolean stale, double deviation) {
    return new Outcome(
        "column-plumb",
        "A3/across",
        round,
        OutcomeUnit.MILLIMETRE,
        OptionalDouble.empty(),
        deviation,
        deviation,
        0.0014,
        2,
        Optional.of(new Limits(OptionalDouble.of(-0.007), OptionalDouble.of(0.007), "invented")),
        OptionalDouble.of(0.5),
        Optional.of(verdict),
        stale,
        "",
        "",
        List.of());
  }

  private HoldPoint point(Stage stage, Outcome... outcomes) {
    StageFindings findings =
        new StageFindings(
            "lift",
            4,
            List.of(outcomes),
            Map.of(),
            Map.of(),
            List.of(),
            notes,
            new Answer(Answer.Kind.GO_ON, "", ""));
    boolean measured = outcomes.length > 0 || !notes.isEmpty();
    return HoldPoint.of(
        stage,
        measured ? Optional.of(findings) : Optional.empty(),
        readings,
        acceptances,
        signatures);
  }

  private void sign(HoldPoint point) {
    signatures.add(new Signature("lift", "M. Reed", point.statement(), AT));
  }

  private void accept(HoldPoint point) {
    point
        .open()
        .forEach(
            item ->
                acceptances.add(
                    new Acceptance(
                        "lift", item.key(), item.found(), "M. Reed", "letter 7", "trimmed", AT)));
  }

  @Test
  void whatConformsClosesItsItemAndASignatureTheHoldPoint() {
    HoldPoint point = point(LIFT, outcome(Verdict.CONFORMING, 1, false, 0.001));
    assertEquals(How.CONFORMS, point.items().get(0).how());
    assertEquals("+1.0 ± 1.4 mm, conforming", point.items().get(0).found());
    assertEquals(State.TO_SIGN, point.state());
    assertTrue(point.state().holds(), "work may go on before anyone signed");
    sign(point);
    HoldPoint signed = point(LIFT, outcome(Verdict.CONFORMING, 1, false, 0.001));
    assertEquals(State.SIGNED, signed.state());
    assertEquals("M. Reed", signed.signature().orElseThrow().by());
    assertFalse(signed.state().holds());
  }

  @ParameterizedTest
  @EnumSource(
      value = Verdict.class,
      names = {"UNDECIDED", "NONCONFORMING"})
  void undecidedIsAsOpenAsNonconforming(Verdict verdict) {
    HoldPoint point = point(LIFT, outcome(verdict, 1, false, 0.008));
    assertEquals(State.OPEN, point.state());
    sign(point);
    assertEquals(State.OPEN, point(LIFT, outcome(verdict, 1, false, 0.008)).state());
  }

  @Test
  void reworkClosesByAConfirmingRound() {
    assertEquals(
        How.REWORKED,
        point(LIFT, outcome(Verdict.CONFORMING, 2, false, 0.001)).items().get(0).how());
    assertEquals(State.OPEN, point(LIFT, outcome(Verdict.UNDECIDED, 2, false, 0.006)).state());
  }

  @Test
  void whatWasMovedSinceIsOpenEvenIfItConformed() {
    HoldPoint point = point(LIFT, outcome(Verdict.CONFORMING, 1, true, 0.001));
    assertEquals(How.STALE, point.items().get(0).how());
    assertEquals(State.OPEN, point.state());
  }

  @Test
  void acceptanceHoldsOnlyWhileTheItemStandsAsItDid() {
    accept(point(LIFT, outcome(Verdict.NONCONFORMING, 1, false, 0.018)));
    HoldPoint accepted = point(LIFT, outcome(Verdict.NONCONFORMING, 1, false, 0.018));
    assertEquals(State.TO_SIGN, accepted.state());
    assertEquals("letter 7", accepted.items().get(0).acceptance().orElseThrow().reference());
    assertEquals(State.OPEN, point(LIFT, outcome(Verdict.NONCONFORMING, 1, false, 0.0195)).state());
    assertEquals(State.OPEN, point(LIFT, outcome(Verdict.NONCONFORMING, 2, false, 0.018)).state());
  }

  @Test
  void signatureHoldsOnlyForWhatWasSigned() {
    sign(point(LIFT, outcome(Verdict.CONFORMING, 1, false, 0.001)));
    HoldPoint later = point(LIFT, outcome(Verdict.CONFORMING, 1, false, 0.003));
    assertEquals(State.TO_SIGN, later.state());
    assertEquals(State.OPEN, point(LIFT, outcome(Verdict.NONCONFORMING, 1, false, 0.012)).state());
  }

  @Test
  void unmeasuredAndContradictoryAreOpenAndMayBeAccepted() {
    notes.add(new Note(Note.Kind.NOT_MEASURED, "Not measured: A2.", List.of()));
    notes.add(new Note(Note.Kind.SLIP_SUSPECTED, "Two readings contradict.", List.of("r1")));
    notes.add(new Note(Note.Kind.INFORMATION, "Worth knowing.", List.of()));
    HoldPoint point = point(LIFT, outcome(Verdict.CONFORMING, 1, false, 0.001));
    assertEquals(
        List.of("not-measured", "slip-suspected"),
        point.open().stream().map(SignOffItem::key).toList());
    accept(point);
    assertEquals(State.TO_SIGN, point(LIFT, outcome(Verdict.CONFORMING, 1, false, 0.001)).state());
  }

  @Test
  void questionIsClosedByYesAlone() {
    assertEquals(State.NOT_BEGUN, point(ASKING).state());
    readings = answer(0);
    assertEquals(How.ANSWERED_NO, point(ASKING).items().get(0).how());
    assertEquals(State.OPEN, point(ASKING).state());
    readings = answer(1);
    HoldPoint point = point(ASKING);
    assertEquals("Are the props set? Yes.", point.items().get(0).found());
    assertEquals(State.TO_SIGN, point.state());
  }

  private static List<Reading> answer(double yes) {
    return new InventedJob().read("lift", MeasuredQuantity.ATTRIBUTE, "props", yes).readings();
  }

  @Test
  void valueWithoutALimitHoldsNothingUp() {
    Outcome value =
        new Outcome(
            "clear-span",
            "3/eave",
            1,
            OutcomeUnit.MILLIMETRE,
            OptionalDouble.empty(),
            8.5,
            0.1,
            0.002,
            2,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            false,
            "",
            "",
            List.of());
    assertEquals(List.of(), point(LIFT, value).items());
  }

  @Test
  void stageWithoutAHoldPointHasNone() {
    Stage free = new Stage("lift", "", List.of(), Map.of(), false);
    HoldPoint point = point(free, outcome(Verdict.NONCONFORMING, 1, false, 0.018));
    assertEquals(State.NONE, point.state());
    assertEquals(1, point.open().size());
  }

  @Test
  void acceptanceNeedsNameReferenceAndReason() {
    for (int missing = 0; missing < 3; missing++) {
      List<String> texts = new ArrayList<>(List.of("M. Reed", "letter 7", "trimmed"));
      texts.set(missing, " ");
      assertThrows(
          IllegalArgumentException.class,
          () -> new Acceptance("lift", "x", "y", texts.get(0), texts.get(1), texts.get(2), AT));
    }
    assertThrows(IllegalArgumentException.class, () -> new Signature("lift", "", "", AT));
  }

  @Test
  void cautionsStandWhereSomethingHangsOverhead() {
    assertEquals(List.of(), Cautions.of(new InventedJob().build(), "arrival"));
    assertEquals(5, Cautions.of(new InventedJob().build(), "lift").size());
    assertEquals(5, Cautions.of(new InventedJob().build(), "roofing").size());
    assertEquals(List.of(), Cautions.of(new InventedJob().build(), "no such stage"));
  }
}
