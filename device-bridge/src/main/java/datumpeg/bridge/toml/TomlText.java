package datumpeg.bridge.toml;

import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Place;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/** Reads the text of a TOML file. */
public final class TomlText {
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private TomlText() {}

  /**
   * The file's outermost table. What breaks the rules of TOML is added to the mistakes; the table
   * then holds only part of the file.
   *
   * @param file the file's name, for the places of mistakes
   */
  public static Table read(String text, String file, Mistakes mistakes) {
    TomlParseResult parsed =
        Toml.parse(text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
    for (TomlParseError error : parsed.errors()) {
      mistakes.add(
          new Place(file, error.position().line(), error.position().column()),
          sentence(String.valueOf(error.getMessage())));
    }
    return new Table(parsed, "", Place.ofFile(file), mistakes);
  }

  private static String sentence(String message) {
    return "This is not TOML: " + message + (message.endsWith(".") ? "" : ".");
  }
}
