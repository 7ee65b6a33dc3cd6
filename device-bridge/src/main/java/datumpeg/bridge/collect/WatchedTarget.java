package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.mistake.Nearest;
import java.util.List;
import java.util.OptionalInt;

/**
 * One target shown live, of which only the value confirmed is kept.
 *
 * @param stage the one a kept value is of
 */
public record WatchedTarget(Stage stage, Wanted wanted, HoldRule rule) {

  /**
   * A target of a job.
   *
   * @param stageId empty for the stage measured last of those that measure the target, else the
   *     first of them
   * @throws InputException if no stage measures it
   */
  public static WatchedTarget of(StoredJob stored, String stageId, String target) {
    Stage stage = stageId.isEmpty() ? likely(stored, target) : CaptureIntake.stage(stored, stageId);
    Wanted wanted =
        Wanted.of(MeasuringList.of(stored.job().setOut(), stage)).stream()
            .filter(each -> !each.isQuestion())
            .filter(each -> each.target().text().equals(target))
            .findFirst()
            .orElseThrow(
                () ->
                    new InputException(
                        "The stage " + stage.id() + " does not measure '" + target + "'."));
    return new WatchedTarget(stage, wanted, HoldRule.of(stored.job(), stage));
  }

  private static Stage likely(StoredJob stored, String target) {
    List<Stage> having =
        stored.job().stages().stream()
            .filter(
                one ->
                    MeasuringList.of(stored.job().setOut(), one).targets().stream()
                        .anyMatch(other -> other.text().equals(target) && isMeasured(other)))
            .toList();
    if (having.isEmpty()) {
      List<String> known =
          stored.job().stages().stream()
              .flatMap(one -> MeasuringList.of(stored.job().setOut(), one).targets().stream())
              .filter(WatchedTarget::isMeasured)
              .map(Target::text)
              .toList();
      throw new InputException(
          "No stage of "
              + stored.key()
              + " measures '"
              + target
              + "'; "
              + Nearest.of(target, known)
                  .map(nearest -> "the nearest is '" + nearest + "'.")
                  .orElse("'reduce' and 'measure' name the targets, such as column.A3/across."));
    }
    return having.stream()
        .filter(
            one -> stored.readings().stream().anyMatch(reading -> reading.stage().equals(one.id())))
        .reduce((earlier, later) -> later)
        .orElse(having.get(0));
  }

  private static boolean isMeasured(Target target) {
    return target.quantity() != MeasuredQuantity.ATTRIBUTE;
  }

  /** What a live value says beside its limits. */
  public LiveDeviation deviation(StoredJob stored) {
    return LiveDeviation.of(stored.job(), rule, wanted);
  }

  /** How the session is guided: every value is shown, none kept until it is confirmed. */
  public GuideSetting setting(Collector collector) {
    return new GuideSetting(
        collector, rule, Guide.Order.CONFIRMED, List.of(), OptionalInt.empty(), List::of);
  }
}
