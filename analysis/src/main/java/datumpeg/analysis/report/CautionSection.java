package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.signoff.Cautions;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What can hurt someone while the stage is put right. Common practice, no source; it stands from
 * walls up to roof sheets, where something heavy is overhead.
 */
final class CautionSection {
  private final Job job;

  CautionSection(Job job) {
    this.job = job;
  }

  void write(Markup page, List<StageFindings> stages) {
    page.open("section", "class", "caution");
    Set<String> cautions = new LinkedHashSet<>();
    stages.forEach(stage -> cautions.addAll(Cautions.of(job, stage.stage())));
    if (!cautions.isEmpty()) {
      page.element("h3", "Cautions").open("ul");
      cautions.forEach(caution -> page.element("li", caution));
      page.close();
    }
    page.element("p", "This page informs. " + Cautions.WHO_DECIDES);
    page.close();
  }
}
