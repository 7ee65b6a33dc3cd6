package datumpeg.analysis.report.writing;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;

/**
 * Writes XML elements as text: what it wrote is well-formed, whatever words came in.
 *
 * <p>Characters that XML 1.0 (fifth edition, 2008, production 2) does not allow, and those that
 * turn the direction of writing, become U+FFFD: they could hide what a page says. One thread.
 */
public final class Markup {
  private static final char REPLACEMENT = '\uFFFD';

  /** After these a line break would show as a space. */
  private static final Set<String> INLINE =
      Set.of("span", "b", "em", "small", "code", "strong", "svg");

  private final StringBuilder text = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Begins an element.
   *
   * @param attributes names and values in turn
   */
  public Markup open(String element, String... attributes) {
    start(element, attributes);
    text.append('>');
    open.push(element);
    return this;
  }

  /** Ends the element begun last. */
  public Markup close() {
    String element = open.pop();
    text.append("</").append(element).append('>');
    breakAfter(element);
    return this;
  }

  /** An element with nothing but words in it. */
  public Markup element(String element, String words, String... attributes) {
    return open(element, attributes).words(words).close();
  }

  /** An element with nothing in it. */
  public Markup empty(String element, String... attributes) {
    start(element, attributes);
    text.append("/>");
    breakAfter(element);
    return this;
  }

  /** Words, escaped. */
  public Markup words(String words) {
    text.append(escaped(words));
    return this;
  }

  /** A style sheet, as it is: inside a style element HTML knows no references. */
  public Markup styleSheet(String css) {
    if (css.contains("<") || css.contains("&")) {
      throw new IllegalArgumentException("The style sheet holds '<' or '&'; expected neither.");
    }
    text.append(css);
    return this;
  }

  /**
   * Appends what another wrote, as it is.
   *
   * @throws IllegalStateException if an element of the other is still open
   */
  public Markup append(Markup other) {
    text.append(other.written());
    return this;
  }

  /**
   * All that was written.
   *
   * @throws IllegalStateException if an element is still open
   */
  public String written() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("The element " + open.peek() + " is still open.");
    }
    return text.toString();
  }

  private void start(String element, String... attributes) {
    text.append('<').append(element);
    for (int i = 0; i < attributes.length; i += 2) {
      text.append(' ').append(attributes[i]).append("=\"");
      text.append(escaped(attributes[i + 1])).append('"');
    }
  }

  private void breakAfter(String element) {
    if (!INLINE.contains(element)) {
      text.append('\n');
    }
  }

  /** The words with every character that means something in markup written as a reference. */
  static String escaped(String words) {
    StringBuilder safe = new StringBuilder(words.length() + 16);
    words.codePoints().forEach(point -> appendEscaped(safe, point));
    return safe.toString();
  }

  private static void appendEscaped(StringBuilder safe, int point) {
    switch (point) {
      case '<' -> safe.append("&lt;");
      case '>' -> safe.append("&gt;");
      case '&' -> safe.append("&amp;");
      case '"' -> safe.append("&quot;");
      case '\'' -> safe.append("&#39;");
      default -> {
        if (allowed(point)) {
          safe.appendCodePoint(point);
        } else {
          safe.append(REPLACEMENT);
        }
      }
    }
  }

  private static boolean allowed(int point) {
    boolean control =
        (point < 0x20 && point != '\t' && point != '\n') || between(point, 0x7F, 0x9F);
    boolean turning = between(point, 0x202A, 0x202E) || between(point, 0x2066, 0x2069);
    boolean surrogate = between(point, 0xD800, 0xDFFF);
    return !control && !surrogate && !turning && point != 0xFFFE && point != 0xFFFF;
  }

  private static boolean between(int point, int first, int last) {
    return point >= first && point <= last;
  }
}
