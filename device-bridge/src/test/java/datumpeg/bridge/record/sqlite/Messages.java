package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertTrue;

/** Looks into the messages people see. */
final class Messages {
  private Messages() {}

  static void assertSays(Throwable thrown, String... parts) {
    String message = String.valueOf(thrown.getMessage());
    for (String part : parts) {
      assertTrue(message.contains(part), () -> "\"" + part + "\" is not in: " + message);
    }
  }
}
