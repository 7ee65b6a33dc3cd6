package datumpeg.analysis.conform;

/**
 * One row of the table of permitted deviations.
 *
 * @param id how a job names it
 * @param rule the arithmetic
 * @param source title of the document
 * @param clause where in it
 * @param edition which edition
 * @param confidence where the row is known from
 * @param note what it applies to
 */
public record LimitRow(
    String id,
    LimitRule rule,
    String source,
    String clause,
    String edition,
    Confidence confidence,
    String note) {

  /** Whether somebody compared the row with the document itself. */
  public boolean seen() {
    return confidence == Confidence.COMPARED;
  }

  /** The source as printed everywhere, with the warning that a row nobody compared carries. */
  public String printedSource() {
    return source
        + " "
        + clause
        + " ("
        + edition
        + ")"
        + (seen() ? "" : ", verify against your copy");
  }

  public Tolerance tolerance() {
    return new Tolerance(rule, printedSource());
  }
}
