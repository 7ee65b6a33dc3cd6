package datumpeg.desktop.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.HoldPoint.State;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StageAnswerTest {
  private static StageFindings findings(Answer.Kind kind) {
    return new StageFindings(
        "arrival",
        4,
        List.of(),
        Map.of(),
        Map.of(),
        List.of(),
        List.of(),
        new Answer(kind, "The slab fits: set out.", "Set out."));
  }

  private static StageAnswer answer(Answer.Kind kind, String stage, State state) {
    HoldPoint point =
        new HoldPoint(
            new Stage(stage, "", List.of(), Map.of(), true), state, List.of(), Optional.empty());
    return StageAnswer.of(findings(kind), List.of(point), Words.of(Locale.ROOT));
  }

  @ParameterizedTest
  @CsvSource({"OPEN", "TO_SIGN"})
  void aStageWhoseHoldPointIsOpenIsNeverShownAsDone(State state) {
    StageAnswer answer = answer(Answer.Kind.GO_ON, "arrival", state);
    assertEquals(Standing.UNDECIDED, answer.standing());
    assertEquals(
        "Not done, the hold point is open. By the numbers: The slab fits: set out.",
        answer.sentence());
  }

  @Test
  void aStageThatIsSignedOrHasNoHoldPointIsShownByItsNumbers() {
    StageAnswer byNumbers =
        new StageAnswer(Standing.CONFORMING, "The slab fits: set out.", "Set out.");
    assertEquals(byNumbers, answer(Answer.Kind.GO_ON, "arrival", State.SIGNED));
    assertEquals(byNumbers, answer(Answer.Kind.GO_ON, "arrival", State.NONE));
    assertEquals(byNumbers, answer(Answer.Kind.GO_ON, "lift", State.OPEN), "of another stage");
    assertEquals(
        new StageAnswer(Standing.NONCONFORMING, "The slab fits: set out.", "Set out."),
        answer(Answer.Kind.STOP, "arrival", State.OPEN),
        "what is worse is said as it is");
  }
}
