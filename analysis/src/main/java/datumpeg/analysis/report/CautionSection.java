package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.Markup;
import java.util.List;

/**
 * What can hurt someone while the stage is put right. Common practice, no source; it stands from
 * walls up to roof sheets, where something heavy is overhead.
 */
final class CautionSection {
  private static final List<String> CAUTIONS =
      List.of(
          "A frame that is not braced stands only by its props. Loosen, move or remove a prop for"
              + " one column at a time, with the frame held, and never to make a number better.",
          "Wind: lift nothing and stand up no sheets on a windy day; agree beforehand at which wind"
              + " the work stops, and leave the frame propped when you leave the site.",
          "Anchors: load them only when they are set as their maker says; a base that must move"
              + " after its anchors are drilled is a question for the engineer.",
          "Lifting and working at height: people licensed for it, with the gear and the fall"
              + " protection the local rules ask for; nobody under a load.");

  private final Job job;

  CautionSection(Job job) {
    this.job = job;
  }

  void write(Markup page, List<StageFindings> stages) {
    page.open("section", "class", "caution");
    if (stages.stream().anyMatch(stage -> isOverhead(stage.stage()))) {
      page.element("h3", "Cautions").open("ul");
      CAUTIONS.forEach(caution -> page.element("li", caution));
      page.close();
    }
    page.element(
        "p",
        "This page informs. The engineer's drawings, the local codes and licensed practice decide.");
    page.close();
  }

  /** From walls up until the roof sheets are on, in the job's own order of stages. */
  private boolean isOverhead(String stage) {
    List<String> order = job.stages().stream().map(Stage::id).toList();
    int at = order.indexOf(stage);
    return at >= 0 && at >= order.indexOf("standing") && at <= order.lastIndexOf("roofing");
  }
}
