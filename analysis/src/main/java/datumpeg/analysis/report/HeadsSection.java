package datumpeg.analysis.report;

import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.report.writing.Markup;

/** What ties the page to the record it was made from. */
final class HeadsSection {
  private final Findings findings;

  HeadsSection(Findings findings) {
    this.findings = findings;
  }

  void write(Markup page, ReportOptions options) {
    page.open("section").element("h3", "Heads to keep");
    page.element(
        "p",
        "Whoever keeps this page can later tell whether the record behind it was changed or cut"
            + " short: these are the newest entries of its chains when the page was made.",
        "class",
        "facts");
    if (options.recordHeads().isEmpty()) {
      page.element("p", "None were given.", "class", "facts");
    }
    options.recordHeads().forEach(head -> page.element("p", head, "class", "heads"));
    page.element("p", "job file " + findings.jobDigest(), "class", "heads");
    page.element(
        "p",
        "Datumpeg " + options.programVersion() + ", printed " + options.printedAt(),
        "class",
        "facts");
    page.close();
  }
}
