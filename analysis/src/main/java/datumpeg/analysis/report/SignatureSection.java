package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.report.writing.Markup;
import java.util.List;
import java.util.Optional;

/** Lines to sign on. */
final class SignatureSection {
  private final Job job;

  SignatureSection(Job job) {
    this.job = job;
  }

  void write(Markup page, Optional<String> stage) {
    page.open("section", "class", "signatures").element("h3", "Signed");
    page.open("table").open("thead").open("tr");
    for (String column : List.of("As", "Name", "Date", "Signature")) {
      page.element("th", column);
    }
    page.close().close().open("tbody");
    for (String role : roles(stage)) {
      page.open("tr").element("td", role);
      page.element("td", "").element("td", "").element("td", "").close();
    }
    page.close().close().close();
  }

  private List<String> roles(Optional<String> stage) {
    String crew = named("Measured, crew", job.identity().crew());
    return SlabPage.is(stage)
        ? List.of(crew, named("Received, slab", job.identity().slabBy()))
        : List.of(crew, "Engineer");
  }

  private static String named(String role, String name) {
    return name.isBlank() ? role : role + " " + name;
  }
}
