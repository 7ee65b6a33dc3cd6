package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.measure.MeasurePage.Running;
import datumpeg.desktop.text.Words;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The session that runs, as a person drives it by keys and buttons. Between sessions it knows how
 * the last one ended. One thread, the screen's.
 */
final class SessionModel {
  private final Words words;
  private final Sessions sessions;
  private final Sounds sounds;
  private final Memory memory;
  private final Runnable changed;
  private final KeyedInput keyed = new KeyedInput();
  private final TargetsModel targets;
  private Runnable whenEnded = () -> {};
  private boolean bytesShown;
  private boolean footAwaited;
  private String ending = "";
  private @Nullable SessionWish wish;
  private Sessions.@Nullable Session session;
  private @Nullable SessionShot shot;

  /**
   * No session yet.
   *
   * @param changed is called at each change
   */
  SessionModel(Words words, Sessions sessions, Sounds sounds, Memory memory, Runnable changed) {
    this.words = words;
    this.sessions = sessions;
    this.sounds = sounds;
    this.memory = memory;
    this.changed = changed;
    this.targets = new TargetsModel(words, sessions, changed);
  }

  /** Is called when a session has ended. */
  void whenEnded(Runnable told) {
    whenEnded = told;
  }

  boolean isRunning() {
    return session != null;
  }

  /** How the last session ended, in a sentence; empty if that is no longer of interest. */
  String ending() {
    return ending;
  }

  /** Why none was begun. */
  void refuse(String why) {
    ending = why;
    changed.run();
  }

  void forgetEnding() {
    ending = "";
  }

  void begin(SessionWish newWish) {
    wish = newWish;
    memory.become(memory.now().with(newWish));
    ending = "";
    shot = null;
    bytesShown = false;
    footAwaited = false;
    keyed.clear();
    targets.hide();
    session = sessions.begin(newWish, new Hearing());
    changed.run();
  }

  /** Where the last session stood, if one can go on there. */
  Optional<LeftAt> left() {
    return isRunning() ? Optional.empty() : memory.now().left();
  }

  void act(Act act) {
    switch (act) {
      case BYTES -> bytesShown = !bytesShown;
      case TONES -> memory.become(memory.now().withTones(!memory.now().tones()));
      case FOOT -> footAwaited = !footAwaited;
      case GO -> toggleTargets();
      default -> type(act.line());
    }
    changed.run();
  }

  private void toggleTargets() {
    SessionWish asked = wish;
    if (asked != null && !asked.isWatch()) {
      targets.toggle(asked);
    }
  }

  /** The held value is a reading of this one of the choices. */
  void choice(int index) {
    type(Integer.toString(index + 1));
  }

  /** Asks for a target out of turn. */
  void goTo(Wanted wanted) {
    targets.hide();
    type("go " + wanted.name());
    changed.run();
  }

  private void type(String line) {
    Sessions.Session going = session;
    if (going != null) {
      going.typed(line);
    }
  }

  /** A character came from the keyboard, whatever has the focus; false if it means nothing. */
  boolean typed(String character) {
    boolean before = keyed.isEmpty();
    Optional<Act> act = keyed.typed(character).flatMap(this::meant);
    act.ifPresent(this::act);
    changed.run();
    return act.isPresent() || !before || !keyed.isEmpty();
  }

  /** What a letter means now. A question of the stage is answered by its own two letters only. */
  private Optional<Act> meant(String letter) {
    if (isHeld() || isAsked()) {
      Optional<Act> answer = Act.ofAnswer(letter);
      if (answer.isPresent()) {
        return answer;
      }
    }
    return Act.ofKey(letter)
        .filter(act -> isHeld() || !act.answers())
        .filter(act -> canTell() || act != Act.MEASURE);
  }

  private boolean isHeld() {
    SessionShot now = shot;
    return now != null && now.guide().question().isPresent();
  }

  private boolean canTell() {
    SessionShot now = shot;
    return now != null && now.canTell();
  }

  private boolean isAsked() {
    SessionShot now = shot;
    return now != null && now.guide().wanted().filter(Wanted::isQuestion).isPresent();
  }

  boolean hasTyped() {
    return !keyed.isEmpty();
  }

  /** The Enter key: a value is complete. Without one it does nothing, so that none is accepted. */
  void enter() {
    keyed.enter().ifPresent(this::type);
    changed.run();
  }

  void rubOut() {
    keyed.rubOut();
    changed.run();
  }

  /** Drops what was typed; without that closes the list; where the foot switch is awaited: none. */
  void escape() {
    if (footAwaited) {
      footAwaited = false;
      memory.become(memory.now().withFootKey(""));
    } else if (keyed.isEmpty()) {
      targets.hide();
    }
    keyed.clear();
    changed.run();
  }

  /** A key went down; true if it is the foot switch's, or becomes it. */
  boolean pressed(String keyName) {
    if (footAwaited && !keyName.equals("Esc")) {
      footAwaited = false;
      memory.become(memory.now().withFootKey(keyName));
      changed.run();
      return true;
    }
    if (!keyName.equals(memory.now().footKey())) {
      return false;
    }
    if (isHeld()) {
      act(Act.ACCEPT);
    }
    return true;
  }

  /** The session as it is shown; empty between sessions. */
  Optional<Running> page() {
    return session == null
        ? Optional.empty()
        : Optional.of(
            new RunningPage(
                    words,
                    wish,
                    shot,
                    keyed.text(),
                    memory.now(),
                    targets.shown(),
                    bytesShown,
                    footAwaited)
                .page());
  }

  /** Hears one session; what an earlier one still says is not listened to. */
  private final class Hearing implements Sessions.Told {
    @Override
    public void stands(SessionShot newShot) {
      SessionShot before = shot;
      shot = newShot;
      remember(newShot.guide().wanted().map(Wanted::name).orElse(""));
      sound(before, newShot);
      if (before != null && before.takenCount() != newShot.takenCount()) {
        targets.refresh();
      }
      changed.run();
    }

    private void remember(String target) {
      boolean known =
          memory.now().left().filter(session -> session.target().equals(target)).isPresent();
      if (!known && !target.isEmpty()) {
        memory.become(memory.now().withTarget(target));
      }
    }

    private void sound(@Nullable SessionShot before, SessionShot now) {
      if (!memory.now().tones()) {
        return;
      }
      if (now.takenCount() > (before == null ? 0 : before.takenCount())) {
        sounds.accepted();
      } else if (now.heldCount() > (before == null ? 0 : before.heldCount())) {
        if (now.watched().isEmpty()) {
          sounds.held();
        } else if (BigValue.isInside(now)) {
          sounds.accepted();
        }
      }
    }

    @Override
    public void ended(String trouble, long recordedCount) {
      session = null;
      shot = null;
      targets.hide();
      ending =
          (trouble.isEmpty() ? "" : trouble + " ") + words.count("measure.ended", recordedCount);
      whenEnded.run();
    }
  }
}
