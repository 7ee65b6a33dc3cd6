package datumpeg.bridge.record;

import java.time.Clock;

/**
 * Who opens a session, and with what.
 *
 * @param operator who; may be empty
 * @param programVersion never blank
 * @param clock what stamps the rows
 */
public record SessionStart(String operator, String programVersion, Clock clock) {
  public SessionStart {
    if (programVersion.isBlank()) {
      throw new IllegalArgumentException("programVersion is blank");
    }
  }
}
