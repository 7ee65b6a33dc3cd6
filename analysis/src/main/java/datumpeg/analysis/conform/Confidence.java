package datumpeg.analysis.conform;

import java.util.Locale;

/** How well a row of the table of permitted deviations is known to say what its document says. */
public enum Confidence {
  COMPARED("compared with the document"),
  SECONDARY("another document that quotes it, not the document itself"),
  MEMORY_HIGH("memory, fairly sure"),
  MEMORY_MEDIUM("memory, unsure"),
  MEMORY_LOW("memory, doubtful");

  private final String words;

  Confidence(String words) {
    this.words = words;
  }

  /** As written in the table. */
  public String text() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** As told to a person. */
  public String words() {
    return words;
  }
}
