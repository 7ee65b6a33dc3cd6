package datumpeg.desktop.text;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.FeetInWords;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Pattern;

/**
 * The texts of the window by their keys, from one resource bundle, and the units in which its user
 * reads lengths. The units may change while the window is open: who shows a length asks for {@link
 * #figures} each time.
 *
 * <p>Thread-safe.
 */
public final class Words {
  /** Where the texts stand. */
  static final String BUNDLE = "datumpeg.desktop.text.words";

  /** Not within a day or the name of a thing. */
  private static final Pattern HYPHEN_AS_MINUS = Pattern.compile("(?<![^\\s(])-(?=\\d)");

  private final ResourceBundle bundle;
  private volatile Figures figures = Figures.in(LengthDisplay.METRIC);
  private volatile LengthDisplay units = LengthDisplay.METRIC;

  private Words(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The texts of the language nearest to the locale. */
  public static Words of(Locale locale) {
    return new Words(ResourceBundle.getBundle(BUNDLE, locale));
  }

  /** How numbers are written for this user, now. */
  public Figures figures() {
    return figures;
  }

  public void units(LengthDisplay newUnits) {
    units = newUnits;
    figures = Figures.in(newUnits);
  }

  /** A sentence of the analysis in the user's units, with a true minus sign before numbers. */
  public String told(String sentence) {
    String told = units == LengthDisplay.IMPERIAL ? FeetInWords.words(sentence) : sentence;
    return HYPHEN_AS_MINUS.matcher(told).replaceAll("−");
  }

  /**
   * The text of the key, with {@code {0}}, {@code {1}} … replaced. Numbers are not grouped.
   *
   * @throws java.util.MissingResourceException if there is no such text
   */
  public String text(String key, Object... values) {
    Object[] written = new Object[values.length];
    for (int i = 0; i < values.length; i++) {
      written[i] = String.valueOf(values[i]);
    }
    return new MessageFormat(bundle.getString(key), bundle.getLocale()).format(written);
  }

  /**
   * The text for one or for many of something, {@code KEY.one} or {@code KEY.many}; the number is
   * {@code {0}}, what else is given follows.
   */
  public String count(String key, long number, Object... others) {
    Object[] values = new Object[others.length + 1];
    values[0] = number;
    System.arraycopy(others, 0, values, 1, others.length);
    return text(key + (number == 1 ? ".one" : ".many"), values);
  }

  /** The name of a check; a check that has none here is called by its id. */
  public String check(String id) {
    return named("check." + id, id);
  }

  /** The name of a stage; a stage of a job's own is called by its id. */
  public String stage(String id) {
    return named("stage." + id, id);
  }

  /** The word for how something stands. */
  public String standing(Standing standing) {
    return bundle.getString(standing.key());
  }

  private String named(String key, String otherwise) {
    return bundle.containsKey(key) ? bundle.getString(key) : otherwise;
  }
}
