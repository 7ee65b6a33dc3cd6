package datumpeg.analysis.report;

import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.GuardBand;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.Markup;

/** What the numbers mean, for a reader who did not measure. */
final class MeaningSection {
  private final DecisionRule rule;

  MeaningSection(DecisionRule rule) {
    this.rule = rule;
  }

  void write(Markup page) {
    page.open("section").element("h2", "What the numbers mean");
    page.element(
        "p",
        "Deviation is measured less plan. ± U is its expanded uncertainty: k times the standard"
            + " uncertainty, which with k = 2 holds the true value in about 95 of 100 such cases. The"
            + " probability is the chance that the true value lies within the limits, given the"
            + " readings and the stated accuracy of the meters. At "
            + percent(rule.accept())
            + " or more an outcome is conforming, at "
            + percent(rule.reject())
            + " or less nonconforming, between them undecided. Undecided is not \"ok\": the"
            + " measurement cannot tell, and a better one, or the engineer, has to.");
    rule.guard().ifPresent(band -> page.element("p", guard(band)));
    page.element(
        "p",
        "Limits are those the job file names, with the source it gives for them. Where a source"
            + " says \"verify against your copy\", nobody has compared the number with the document:"
            + " do so before relying on it.");
    page.close();
  }

  private static String guard(GuardBand band) {
    return "This job decides by guard bands instead ("
        + band.name()
        + "): conforming only inside the limits drawn in by "
        + LengthDisplay.decimal(band.factor(), 2)
        + " · U, nonconforming only beyond the limits moved out by as much, undecided between.";
  }

  private static String percent(double probability) {
    String text = LengthDisplay.decimal(probability * 100, 2);
    return text.replaceAll("\\.?0+$", "") + " %";
  }
}
