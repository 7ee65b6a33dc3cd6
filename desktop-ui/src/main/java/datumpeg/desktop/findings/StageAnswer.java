package datumpeg.desktop.findings;

import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.List;

/**
 * The answer of a stage as it is shown: what the numbers allow, unless its hold point is open.
 *
 * @param first what to do first; may be empty
 */
record StageAnswer(Standing standing, String sentence, String first) {

  /**
   * The answer of a stage.
   *
   * @param holdPoints of the job's stages, as far as they are known
   */
  static StageAnswer of(StageFindings findings, List<HoldPoint> holdPoints, Words words) {
    Answer answer = findings.answer();
    String sentence = words.told(answer.sentence());
    boolean held =
        holdPoints.stream()
            .anyMatch(
                point -> point.stage().id().equals(findings.stage()) && point.state().holds());
    return answer.kind() == Answer.Kind.GO_ON && held
        ? new StageAnswer(
            Standing.UNDECIDED,
            words.text("findings.held", sentence),
            words.text("findings.held-first"))
        : new StageAnswer(standing(answer.kind()), sentence, words.told(answer.first()));
  }

  private static Standing standing(Answer.Kind kind) {
    return switch (kind) {
      case GO_ON -> Standing.CONFORMING;
      case MEASURE_AGAIN -> Standing.UNDECIDED;
      case STOP -> Standing.NONCONFORMING;
      case NOT_DECIDED -> Standing.NO_LIMIT;
    };
  }
}
