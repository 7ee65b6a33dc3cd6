package datumpeg.desktop.setting;

import datumpeg.analysis.quantity.LengthDisplay;
import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The file in which the settings stand: lines {@code name=value}, to be read and mended by a
 * person.
 *
 * <p>One thread at a time.
 */
public final class SettingsFile {
  private static final String LAST = "last.";

  private final Path file;

  public SettingsFile(Path file) {
    this.file = file;
  }

  /**
   * What the file said.
   *
   * @param settings the usual ones where the file is missing or broken
   * @param trouble what is wrong with the file; empty when nothing is
   */
  public record Loaded(Settings settings, String trouble) {}

  /** Reads the file; a broken one is left as it is, and the usual settings hold. */
  public Loaded load() {
    if (!Files.exists(file)) {
      return new Loaded(Settings.usual(), "");
    }
    Properties lines = new Properties();
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      lines.load(reader);
      return new Loaded(read(lines), "");
    } catch (IOException | IllegalArgumentException e) {
      return new Loaded(Settings.usual(), file + ": " + e.getMessage());
    }
  }

  /**
   * Writes the file whole: a reader, or a crash, never meets half of it.
   *
   * @throws IOException if the folder cannot be made or the file not be written
   */
  public void save(Settings settings) throws IOException {
    @Nullable Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    Files.writeString(fresh, text(settings), StandardCharsets.UTF_8);
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static Settings read(Properties lines) {
    Map<String, String> last = new HashMap<>();
    for (String name : lines.stringPropertyNames()) {
      if (name.startsWith(LAST)) {
        last.put(name.substring(LAST.length()), lines.getProperty(name));
      }
    }
    return new Settings(
        choice(Theme.class, lines, "theme", Theme.LIGHT),
        (int) number(lines, "text", 100),
        choice(LengthDisplay.class, lines, "units", LengthDisplay.METRIC),
        number(lines, "width", 0),
        number(lines, "height", 0),
        last);
  }

  private static double number(Properties lines, String name, double usual) {
    String found = lines.getProperty(name, "").strip();
    try {
      return found.isEmpty() ? usual : Double.parseDouble(found);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(name + " is " + found + "; expected a number", e);
    }
  }

  private static <E extends Enum<E>> E choice(
      Class<E> type, Properties lines, String name, E usual) {
    String found = lines.getProperty(name, "").strip();
    if (found.isEmpty()) {
      return usual;
    }
    TreeSet<String> known = new TreeSet<>();
    for (E each : type.getEnumConstants()) {
      if (each.name().equalsIgnoreCase(found)) {
        return each;
      }
      known.add(each.name().toLowerCase(Locale.ROOT));
    }
    throw new IllegalArgumentException(
        name + " is " + found + "; expected one of " + String.join(", ", known));
  }

  private static String text(Settings settings) throws IOException {
    Properties lines = new Properties();
    lines.setProperty("theme", settings.theme().id());
    lines.setProperty("text", Integer.toString(settings.textPercent()));
    lines.setProperty("units", settings.units().name().toLowerCase(Locale.ROOT));
    lines.setProperty("width", Double.toString(settings.width()));
    lines.setProperty("height", Double.toString(settings.height()));
    settings.lastState().forEach((name, value) -> lines.setProperty(LAST + name, value));
    StringWriter written = new StringWriter();
    lines.store(written, "Datumpeg: how the window was set");
    return written.toString();
  }
}
