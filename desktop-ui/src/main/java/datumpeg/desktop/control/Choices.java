package datumpeg.desktop.control;

import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** What can be chosen of checks, names and rules. Immutable. */
public record Choices(Words words) {

  /** Checks by their ids, called as the user knows them. */
  public List<Choice> ofChecks(List<String> ids) {
    return ids.stream().map(id -> new Choice(id, words.check(id))).toList();
  }

  /** All, or one by its name. */
  public List<Choice> allOr(List<String> names) {
    List<Choice> choices = new ArrayList<>(List.of(new Choice("", words.text("trend.all"))));
    names.forEach(name -> choices.add(new Choice(name, name)));
    return choices;
  }

  /** The values of a matter, each by its words in the resource bundle. */
  public List<Choice> worded(String matter, Enum<?>[] values) {
    return worded(matter, Stream.of(values).map(Enum::name).toList());
  }

  /** The same by the names of the values. */
  public List<Choice> worded(String matter, List<String> values) {
    return values.stream()
        .map(
            value ->
                new Choice(
                    value,
                    words.text(
                        "trend-choice."
                            + matter
                            + "."
                            + value.toLowerCase(Locale.ROOT).replace('_', '-'))))
        .toList();
  }
}
