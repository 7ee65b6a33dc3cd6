package datumpeg.bridge.cli;

import datumpeg.bridge.link.ble.Patience;
import java.time.Duration;

/**
 * The bridge's commands as a process of its own that tries to store what waits every moment, and
 * tells values apart that come soon one behind the other.
 */
final class HurriedProgram {
  private static final Spans SPANS = new Spans(Duration.ofMillis(100), Duration.ofMillis(50));

  private HurriedProgram() {}

  public static void main(String[] arguments) {
    CommandRunner.main(
        new DatumpegCommand(Console.ofProcess(), Patience.USUAL, SPANS),
        arguments,
        BridgeCommands::of);
  }
}
