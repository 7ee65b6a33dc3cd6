package datumpeg.analysis.signoff;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Stage;
import java.util.ArrayList;
import java.util.List;

/**
 * What can hurt someone at a stage. Common practice, no source: the engineer's drawings, the local
 * codes and licensed practice decide.
 */
public final class Cautions {
  /** To be shown with every caution, and where there is none. */
  public static final String WHO_DECIDES =
      "The engineer's drawings, the local codes and licensed practice decide.";

  private static final String PROPS =
      "A frame that is not braced stands only by its props. Loosen, move or remove a prop for one"
          + " column at a time, with the frame held, and never to make a number better.";
  private static final String WIND =
      "Wind: lift nothing and stand up no sheets on a windy day; agree beforehand at which wind the"
          + " work stops, and leave the frame propped when you leave the site.";
  private static final String ANCHORS =
      "Anchors: load them only when they are set as their maker says; a base that must move after"
          + " its anchors are drilled is a question for the engineer.";
  private static final String HEIGHT =
      "Lifting and working at height: people licensed for it, with the gear and the fall protection"
          + " the local rules ask for; nobody under a load.";
  private static final String SWARF =
      "Drilling and cutting: eye and ear protection; sweep swarf off sheets and gutters the same day:"
          + " it rusts through the coating and cuts.";

  private Cautions() {}

  /** The cautions of a stage, in the job's own order of stages; empty before anything is lifted. */
  public static List<String> of(Job job, String stage) {
    List<String> order = job.stages().stream().map(Stage::id).toList();
    int at = order.indexOf(stage);
    List<String> cautions = new ArrayList<>();
    if (at < 0) {
      return cautions;
    }
    boolean overhead = at >= order.indexOf("standing") && at <= order.lastIndexOf("roofing");
    if (overhead) {
      cautions.addAll(List.of(PROPS, WIND, ANCHORS, HEIGHT));
    }
    if (at >= order.indexOf("standing")) {
      cautions.add(SWARF);
    }
    return List.copyOf(cautions);
  }
}
