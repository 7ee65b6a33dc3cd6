package datumpeg.bridge.cli;

import java.nio.file.Path;
import java.util.List;

/** Processes of a test's own that are at home in its folder: the user's own is left alone. */
final class OwnHome {
  private OwnHome() {}

  /**
   * Whatever the machine says of its user is forgotten; the folder is all that the process knows.
   */
  static ProcessBuilder process(Path folder, List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command);
    builder
        .environment()
        .keySet()
        .removeIf(name -> name.startsWith("XDG_") || name.startsWith("DATUMPEG_"));
    builder.environment().put("HOME", folder.toString());
    return builder;
  }
}
