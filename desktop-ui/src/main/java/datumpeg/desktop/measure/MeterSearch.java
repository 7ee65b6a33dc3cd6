package datumpeg.desktop.measure;

import datumpeg.desktop.measure.MeasurePage.Listening;
import datumpeg.desktop.measure.Sessions.Heard;
import datumpeg.desktop.text.Words;
import java.util.List;

/** Listening for Bluetooth LE meters, as far as a person sees it. One thread, the screen's. */
final class MeterSearch {
  private final Words words;
  private final Sessions sessions;
  private final Runnable changed;
  private Listening state = Listening.NEVER;

  /**
   * @param changed is called at each change
   */
  MeterSearch(Words words, Sessions sessions, Runnable changed) {
    this.words = words;
    this.sessions = sessions;
    this.changed = changed;
  }

  Listening state() {
    return state;
  }

  /** Begins, or stops what goes on. */
  void toggle() {
    if (state.going()) {
      stop();
      return;
    }
    state = new Listening(true, 0, words.text("measure.listening"), state.heard());
    changed.run();
    sessions.listen(this::heard);
  }

  /** Stops; what was heard stays to choose from. */
  void stop() {
    if (state.going()) {
      sessions.stopListening();
      state = new Listening(false, 0, sentence(state.heard()), state.heard());
      changed.run();
    }
  }

  private void heard(Heard heard) {
    if (!state.going()) {
      return;
    }
    double done = (double) heard.doneSeconds() / heard.allSeconds();
    state =
        heard.isOver()
            ? new Listening(false, 0, sentence(heard), heard.meters())
            : new Listening(true, done, words.text("measure.listening"), heard.meters());
    changed.run();
  }

  private String sentence(Heard heard) {
    return heard.trouble().isEmpty() ? sentence(heard.meters()) : heard.trouble();
  }

  private String sentence(List<Sessions.Port> meters) {
    return words.text(meters.isEmpty() ? "measure.heard-none" : "measure.heard");
  }
}
