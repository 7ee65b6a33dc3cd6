package datumpeg.desktop.app;

import datumpeg.bridge.cli.BridgeCommands;
import datumpeg.bridge.cli.CommandRunner;
import datumpeg.bridge.cli.DatumpegCommand;
import datumpeg.desktop.source.SiteRecordOpening;
import java.util.ArrayList;
import java.util.List;

/**
 * The program's main class. It does not extend JavaFX's {@code Application}: a class that does
 * cannot be started from the class path, and commands must not load the toolkit.
 */
public final class Main {
  private Main() {}

  public static void main(String[] arguments) {
    CommandRunner.main(arguments, Main::commands);
  }

  /** Every command of the program, in the order of the help. */
  static List<Object> commands(DatumpegCommand program) {
    List<Object> commands = new ArrayList<>(BridgeCommands.of(program));
    commands.add(new DesktopCommand(program, SiteRecordOpening::new));
    return commands;
  }
}
