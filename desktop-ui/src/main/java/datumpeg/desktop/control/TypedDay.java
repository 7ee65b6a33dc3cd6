package datumpeg.desktop.control;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.function.Consumer;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Days as they are shown everywhere, 2026-03-02; read so, or as the country writes them. */
final class TypedDay extends StringConverter<LocalDate> {
  private static final List<DateTimeFormatter> READ =
      List.of(
          DateTimeFormatter.ISO_LOCAL_DATE,
          DateTimeFormatter.ofLocalizedDate(FormatStyle.SHORT),
          DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM));

  private final Consumer<String> told;

  /**
   * @param told is given each text that is no day, and an empty one when there is nothing wrong
   */
  TypedDay(Consumer<String> told) {
    this.told = told;
  }

  @Override
  public String toString(@Nullable LocalDate day) {
    return day == null ? "" : day.toString();
  }

  @Override
  public @Nullable LocalDate fromString(@Nullable String typed) {
    String text = typed == null ? "" : typed.strip();
    told.accept("");
    if (text.isEmpty()) {
      return null;
    }
    for (DateTimeFormatter way : READ) {
      try {
        return LocalDate.parse(text, way);
      } catch (DateTimeException e) {
        // the next way may fit
      }
    }
    told.accept(text);
    throw new DateTimeParseException("no day", text, 0);
  }
}
