package datumpeg.analysis.report;

import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.List;

/** What to mark from the edges of the slab, one line mark and edge a row. */
final class LinesTable {
  private final LengthFigures figures;

  LinesTable(LengthFigures figures) {
    this.figures = figures;
  }

  /**
   * @param doubted whether readings of the stage contradict each other
   */
  void write(Markup page, LinePlacement lines, boolean doubted) {
    page.element("h3", "Where to snap the lines");
    if (doubted) {
      page.element("p", "Snap none yet: readings of this stage contradict each other.");
    }
    page.element(
        "p",
        lines.sentence()
            + " Measured square from the edge to the line mark; a minus lies beyond the edge.");
    page.open("table").open("thead").open("tr");
    page.element("th", "Line").element("th", "From edge");
    for (String column : List.of("Planned", "Mark", "± U (k = 2), " + figures.unit())) {
      page.element("th", column, "class", "number");
    }
    page.close().close().open("tbody");
    for (LinePlacement.Offset offset : lines.offsets()) {
      page.open("tr").element("td", offset.line()).element("td", offset.edge());
      page.element("td", figures.number(offset.plannedMetres()), "class", "number");
      page.element("td", figures.number(offset.metres()), "class", "number");
      page.element(
          "td",
          figures.number(Estimate.COVERAGE_FACTOR * offset.standardUncertaintyMetres()),
          "class",
          "number");
      page.close();
    }
    page.close().close();
  }
}
