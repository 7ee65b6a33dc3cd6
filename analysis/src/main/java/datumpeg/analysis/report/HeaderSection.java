package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.Markup;
import java.util.ArrayList;
import java.util.List;

/** Which job, whose, when, and to whom the page is handed. */
final class HeaderSection {
  private final Job job;

  HeaderSection(Job job) {
    this.job = job;
  }

  void write(Markup page, String title, ReportOptions options) {
    JobIdentity identity = job.identity();
    page.open("header");
    page.element("h1", identity.name().isBlank() ? identity.id() : identity.name());
    page.open("p").element("b", title).close();
    page.element("p", String.join(" · ", facts(options)), "class", "facts");
    if (SlabPage.is(options.stage())) {
      page.element("p", SlabPage.introduction(identity));
    }
    page.close();
  }

  private List<String> facts(ReportOptions options) {
    JobIdentity identity = job.identity();
    List<String> facts = new ArrayList<>();
    fact(facts, "job", identity.id());
    fact(facts, "site", identity.site());
    fact(facts, "crew", identity.crew());
    fact(facts, "slab by", identity.slabBy());
    identity.started().ifPresent(day -> fact(facts, "started", day.toString()));
    identity
        .bearingRadians()
        .ifPresent(
            bearing ->
                fact(
                    facts,
                    "end 1 to end n bears",
                    LengthDisplay.decimal(StrictMath.toDegrees(bearing), 0) + "° from north"));
    fact(facts, "printed", options.printedAt());
    return facts;
  }

  private static void fact(List<String> facts, String name, String value) {
    if (!value.isBlank()) {
      facts.add(name + " " + value);
    }
  }
}
