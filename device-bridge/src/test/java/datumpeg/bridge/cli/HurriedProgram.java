package datumpeg.bridge.cli;

import datumpeg.bridge.link.ble.Patience;
import java.time.Duration;

/** The bridge's commands as a process of its own that tries to store what waits every moment. */
final class HurriedProgram {
  private static final Duration PAUSE = Duration.ofMillis(250);

  private HurriedProgram() {}

  public static void main(String[] arguments) {
    CommandRunner.main(
        new DatumpegCommand(Console.ofProcess(), Patience.USUAL, PAUSE),
        arguments,
        BridgeCommands::of);
  }
}
