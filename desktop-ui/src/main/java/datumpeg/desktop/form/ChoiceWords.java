package datumpeg.desktop.form;

import datumpeg.desktop.control.Choice;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;

/** What may be chosen in a field, by its names on screen. Immutable. */
final class ChoiceWords {
  private final Words words;

  ChoiceWords(Words words) {
    this.words = words;
  }

  List<Choice> of(FormField field) {
    return field.choices().stream().map(word -> new Choice(word, name(field, word))).toList();
  }

  private String name(FormField field, String word) {
    if (field.shape() == FormField.Shape.SOME) {
      return check(word);
    }
    return field.key().equals("stages.after")
        ? words.stage(word)
        : words.text("form.choice." + word.toLowerCase(Locale.ROOT).replace(' ', '-'));
  }

  /** A check, and where frames are measured at several places which of them. */
  private String check(String word) {
    int place = word.indexOf('/');
    return place < 0
        ? words.check(word)
        : words.text(
            "form.name.of",
            words.check(word.substring(0, place)),
            words.text("form.at." + word.substring(place + 1)));
  }
}
