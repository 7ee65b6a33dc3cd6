package datumpeg.analysis.remedy;

import datumpeg.analysis.quantity.LengthDisplay;

/** Numbers in remedies: millimetres to a tenth, with the expanded uncertainty where it matters. */
public final class Millimetres {
  private Millimetres() {}

  /** Without a sign, such as "21.3 mm". */
  public static String of(double metres) {
    return LengthDisplay.decimal(Math.abs(metres) * 1000, 1) + " mm";
  }

  /** With a sign, such as "+3.2 mm". */
  public static String signed(double metres) {
    return LengthDisplay.signed(metres * 1000, 1) + " mm";
  }

  /** With a sign and its expanded uncertainty, such as "+3.2 ± 1.6 mm". */
  public static String signedWith(double metres, double expandedUncertaintyMetres) {
    return LengthDisplay.signed(metres * 1000, 1)
        + " ± "
        + LengthDisplay.decimal(expandedUncertaintyMetres * 1000, 1)
        + " mm";
  }

  /** Without a sign, with its expanded uncertainty, such as "21.3 ± 1.6 mm". */
  public static String with(double metres, double expandedUncertaintyMetres) {
    return LengthDisplay.decimal(Math.abs(metres) * 1000, 1)
        + " ± "
        + LengthDisplay.decimal(expandedUncertaintyMetres * 1000, 1)
        + " mm";
  }
}
