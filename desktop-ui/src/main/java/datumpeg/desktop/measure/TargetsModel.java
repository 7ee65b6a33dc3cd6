package datumpeg.desktop.measure;

import datumpeg.desktop.measure.MeasurePage.TargetChoice;
import datumpeg.desktop.measure.MeasurePage.TargetChoices;
import datumpeg.desktop.measure.Sessions.TargetStand;
import datumpeg.desktop.measure.Sessions.TargetStands;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** All targets of the stage that is measured, to choose one from. One thread, the screen's. */
final class TargetsModel {
  private final Words words;
  private final Sessions sessions;
  private final Runnable changed;
  private @Nullable SessionWish asked;
  private TargetChoices choices = new TargetChoices("", List.of());

  /**
   * @param changed is called when they were found
   */
  TargetsModel(Words words, Sessions sessions, Runnable changed) {
    this.words = words;
    this.sessions = sessions;
    this.changed = changed;
  }

  void toggle(SessionWish wish) {
    if (asked != null) {
      hide();
    } else {
      asked = wish;
      choices = new TargetChoices(words.text("measure.targets-looking"), List.of());
      refresh();
    }
  }

  void hide() {
    asked = null;
  }

  /** Looks again how they stand, while they are shown. */
  void refresh() {
    SessionWish wish = asked;
    if (wish != null) {
      sessions.targets(wish, found -> found(wish, found));
    }
  }

  private void found(SessionWish wish, TargetStands found) {
    if (wish.equals(asked)) {
      choices =
          found.trouble().isEmpty()
              ? new TargetChoices(
                  words.text("measure.targets"),
                  found.targets().stream().map(target -> choice(target, found)).toList())
              : new TargetChoices(found.trouble(), List.of());
      changed.run();
    }
  }

  private TargetChoice choice(TargetStand target, TargetStands found) {
    WantedWords named = new WantedWords(words, found.questions());
    String value =
        target.newestSi().isPresent()
            ? named.written(target.wanted(), target.newestSi().getAsDouble())
            : "";
    String standing = words.standing(target.standing());
    String how =
        switch (target.standing()) {
          case NOT_MEASURED, STALE -> standing;
          case NO_LIMIT -> words.text("measure.target-measured", value);
          default -> words.text("measure.target-stands", value, standing);
        };
    return new TargetChoice(
        target.wanted(), target.standing(), named.instruction(target.wanted()), how);
  }

  /** Empty while they are not asked for. */
  Optional<TargetChoices> shown() {
    return asked == null ? Optional.empty() : Optional.of(choices);
  }
}
