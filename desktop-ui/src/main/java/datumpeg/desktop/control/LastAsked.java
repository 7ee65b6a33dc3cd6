package datumpeg.desktop.control;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a screen was asked last, to be asked again at the next start. Immutable.
 *
 * @param chosen ids by matter; a matter that is not there is open
 * @param from first day of a period
 * @param to last day
 */
public record LastAsked<M extends Enum<M>>(
    Map<M, String> chosen, Optional<LocalDate> from, Optional<LocalDate> to) {
  public LastAsked {
    chosen = Map.copyOf(chosen);
  }

  /**
   * What the settings keep of it, by names that begin with the prefix; an open matter is kept as
   * open.
   */
  public Map<String, String> kept(String prefix, Class<M> matters) {
    Map<String, String> kept = new TreeMap<>();
    for (M matter : matters.getEnumConstants()) {
      kept.put(name(prefix, matter), chosen.getOrDefault(matter, ""));
    }
    kept.put(prefix + "from", from.map(LocalDate::toString).orElse(""));
    kept.put(prefix + "to", to.map(LocalDate::toString).orElse(""));
    return kept;
  }

  /** What was kept; what makes no sense there is left open. */
  public static <M extends Enum<M>> LastAsked<M> ofKept(
      String prefix, Class<M> matters, Map<String, String> kept) {
    Map<M, String> chosen = new EnumMap<>(matters);
    for (M matter : matters.getEnumConstants()) {
      String id = kept.getOrDefault(name(prefix, matter), "");
      if (!id.isEmpty()) {
        chosen.put(matter, id);
      }
    }
    return new LastAsked<>(
        chosen,
        day(kept.getOrDefault(prefix + "from", "")),
        day(kept.getOrDefault(prefix + "to", "")));
  }

  private static String name(String prefix, Enum<?> matter) {
    return prefix + matter.name().toLowerCase(Locale.ROOT);
  }

  private static Optional<LocalDate> day(String text) {
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
