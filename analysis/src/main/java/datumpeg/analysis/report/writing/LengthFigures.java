package datumpeg.analysis.report.writing;

import datumpeg.analysis.quantity.LengthDisplay;

/** Lengths in metres as figures in the reader's units: millimetres, or feet and inches. */
public record LengthFigures(LengthDisplay display) {
  private static final double METRES_PER_INCH = 0.0254;

  /** The unit of deviations and uncertainties. */
  public String unit() {
    return metric() ? "mm" : "in";
  }

  /** The unit of deviations and uncertainties, written out. */
  public String unitWord() {
    return metric() ? "millimetres" : "inches";
  }

  /** How long one unit is. */
  public double unitMetres() {
    return metric() ? 0.001 : METRES_PER_INCH;
  }

  /** A size without its unit, such as {@code 18003.2} or {@code 59' 0 3/4"}. */
  public String size(double metres) {
    return minus(metric() ? LengthDisplay.decimal(metres * 1000, 1) : display.dimension(metres));
  }

  /** A number without sign for a value that has none, or with a minus if it has. */
  public String number(double metres) {
    return minus(LengthDisplay.decimal(metres / unitMetres(), places()));
  }

  /** A deviation with its sign and without its unit. */
  public String signed(double metres) {
    return minus(LengthDisplay.signed(metres / unitMetres(), places()));
  }

  /** A deviation with its unit, such as {@code +3.2 mm}. */
  public String deviation(double metres) {
    return signed(metres) + " " + unit();
  }

  /** A deviation and its expanded uncertainty, such as {@code +3.2 ± 1.5 mm}. */
  public String deviation(double metres, double expandedUncertaintyMetres) {
    return signed(metres) + " ± " + number(expandedUncertaintyMetres) + " " + unit();
  }

  /** A step such as 10 mm or 0.5 in, without needless zeros. */
  public String step(double metres) {
    String text = LengthDisplay.decimal(metres / unitMetres(), 3);
    return text.replaceAll("\\.?0+$", "") + " " + unit();
  }

  private int places() {
    return metric() ? 1 : 2;
  }

  private boolean metric() {
    return display == LengthDisplay.METRIC;
  }

  private static String minus(String text) {
    return text.startsWith("-") ? "−" + text.substring(1) : text;
  }
}
