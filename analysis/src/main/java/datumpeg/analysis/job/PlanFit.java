package datumpeg.analysis.job;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.UnknownPointException;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import java.util.Optional;

/** Whether what a person names is in the job's plan. Each answer is a sentence, empty if it is. */
public final class PlanFit {
  private PlanFit() {}

  /** What keeps a target from being measured in a stage of the job. */
  public static Optional<String> misfit(Job job, Stage stage, Target target) {
    if (target.quantity() == MeasuredQuantity.ATTRIBUTE) {
      return stage.questions().containsKey(target.question())
          ? Optional.empty()
          : Optional.of(noQuestion(stage, target.question()));
    }
    return target.points().stream().flatMap(point -> misfit(job, point).stream()).findFirst();
  }

  /** What keeps a thing from being moved. */
  public static Optional<String> misfit(Job job, MovedThing thing) {
    int n = job.setOut().building().portalFrameCount();
    return switch (thing.feature()) {
      case "portal" ->
          Integer.parseInt(thing.place()) <= n
              ? Optional.empty()
              : Optional.of(
                  "There is no portal frame "
                      + thing.place()
                      + "; frames run from 1 to "
                      + n
                      + ".");
      case "wall" ->
          thing.place().equals("A") || thing.place().equals("B") || isMark(job, thing.place())
              ? Optional.empty()
              : Optional.of("There is no wall " + thing.place() + "; expected wall.A or wall.B.");
      default -> misfit(job, new PointName(thing.feature(), thing.place(), ""));
    };
  }

  private static boolean isMark(Job job, String place) {
    int n = job.setOut().building().portalFrameCount();
    return GridMark.parse(place)
        .filter(mark -> mark.letter() <= 'B' && mark.number() <= n)
        .isPresent();
  }

  private static Optional<String> misfit(Job job, PointName point) {
    try {
      Position position = job.setOut().position(point);
      boolean beside =
          point.feature().equals("slab") && !job.setOut().slab().covers(position.plan());
      return beside
          ? Optional.of(point.text() + " lies beside the slab's outline.")
          : Optional.empty();
    } catch (UnknownPointException e) {
      return Optional.of(String.valueOf(e.getMessage()));
    }
  }

  private static String noQuestion(Stage stage, String name) {
    return "The stage "
        + stage.id()
        + " has no question "
        + name
        + "; it has "
        + (stage.questions().isEmpty() ? "none" : String.join(", ", stage.questions().keySet()))
        + ".";
  }
}
