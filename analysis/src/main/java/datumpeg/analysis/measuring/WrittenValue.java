package datumpeg.analysis.measuring;

/**
 * A value as a meter sent it or a person wrote it: the digits in which people slip.
 *
 * @param value the number; with an empty unit it carries its own
 * @param unit as {@link datumpeg.analysis.quantity.Unit#symbol()}, or empty
 */
public record WrittenValue(String value, String unit) {
  /** Number and unit, such as "11.986 m". */
  public String text() {
    return (value.strip() + " " + unit.strip()).strip();
  }
}
