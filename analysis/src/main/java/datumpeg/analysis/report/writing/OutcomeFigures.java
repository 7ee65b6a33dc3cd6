package datumpeg.analysis.report.writing;

import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.quantity.LengthDisplay;

/** An outcome's numbers as figures: lengths in the reader's units, floor numbers as they are. */
public record OutcomeFigures(LengthFigures lengths, OutcomeUnit unit) {

  /** A size without its unit. */
  public String size(double si) {
    return isLength() ? lengths.size(si) : number(si);
  }

  /** A number without a sign. */
  public String number(double si) {
    return isLength() ? lengths.number(si) : LengthDisplay.decimal(unit.fromSi(si), 1);
  }

  /** A deviation with its sign. */
  public String signed(double si) {
    return isLength()
        ? lengths.signed(si)
        : LengthDisplay.signed(unit.fromSi(si), 1).replace('-', '−');
  }

  /** A deviation and its expanded uncertainty, with the unit where it has one. */
  public String deviation(double si, double expandedUncertaintySi) {
    return signed(si)
        + " ± "
        + number(expandedUncertaintySi)
        + (isLength() ? " " + lengths.unit() : "");
  }

  private boolean isLength() {
    return unit == OutcomeUnit.MILLIMETRE;
  }
}
