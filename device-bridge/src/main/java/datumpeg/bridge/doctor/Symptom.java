package datumpeg.bridge.doctor;

import java.util.Locale;

/**
 * One thing a machine has or lacks.
 *
 * @param subject what was looked at: the serial ports, the bus, …
 * @param state whether it is as meters need it
 * @param found what was found, a sentence
 * @param help what helps, a sentence with the command or package; empty where nothing is needed
 */
public record Symptom(String subject, State state, String found, String help) {

  /** Whether it is as meters need it. */
  public enum State {
    WELL,
    /** Needed only for some meters, or for comfort. */
    LACKING,
    /** Could not be looked at. */
    UNKNOWN;

    public String text() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  static Symptom well(String subject, String found) {
    return new Symptom(subject, State.WELL, found, "");
  }

  static Symptom lacking(String subject, String found, String help) {
    return new Symptom(subject, State.LACKING, found, help);
  }
}
