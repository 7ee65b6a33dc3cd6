package datumpeg.analysis.conform;

/**
 * One row of the table of permitted deviations.
 *
 * @param id how a job names it
 * @param rule the arithmetic
 * @param source title of the document
 * @param clause where in it
 * @param edition which edition
 * @param seen whether somebody compared the row with the document itself
 * @param note what it applies to
 */
public record LimitRow(
    String id,
    LimitRule rule,
    String source,
    String clause,
    String edition,
    boolean seen,
    String note) {

  /** The source as printed everywhere, with the warning a row from memory carries. */
  public String printedSource() {
    return source
        + " "
        + clause
        + " ("
        + edition
        + ")"
        + (seen ? "" : ", verify against your copy");
  }

  public Tolerance tolerance() {
    return new Tolerance(rule, printedSource());
  }
}
