package datumpeg.analysis.conform;

/** The unit an outcome is shown and exported in; inside it is SI. */
public enum OutcomeUnit {
  MILLIMETRE("mm", 1000),
  /** Flatness and levelness numbers of a floor: no length, and larger is better. */
  F_NUMBER("F", 1);

  private final String symbol;
  private final double perSiUnit;

  OutcomeUnit(String symbol, double perSiUnit) {
    this.symbol = symbol;
    this.perSiUnit = perSiUnit;
  }

  public String symbol() {
    return symbol;
  }

  /** An SI value in this unit. */
  public double fromSi(double siValue) {
    return siValue * perSiUnit;
  }
}
