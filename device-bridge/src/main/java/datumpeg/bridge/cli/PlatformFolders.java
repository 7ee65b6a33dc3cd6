package datumpeg.bridge.cli;

import datumpeg.bridge.collect.SpareFolders;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Where this platform keeps a program's files when the user names no place.
 *
 * <p>Linux and other Unixes: XDG Base Directory Specification 0.8 (freedesktop.org), by which a
 * relative path in a variable is ignored. macOS: Apple, File System Programming Guide, "The Library
 * Directory". Windows: the known folder LocalAppData.
 *
 * @param data what the user would miss: the record
 * @param state what may be lost: the log file
 */
public record PlatformFolders(Path data, Path state) {
  private static final String NAME = "datumpeg";

  /** Where readings wait while the disk of the record takes nothing, for who runs this process. */
  public static SpareFolders sparesOfThisProcess() {
    Map<String, String> environment = new HashMap<>(System.getenv());
    environment.putIfAbsent("HOME", System.getProperty("user.home"));
    return of(System.getProperty("os.name", ""), environment).spares(environment);
  }

  SpareFolders spares(Map<String, String> environment) {
    return SpareFolders.of(state, environment);
  }

  /**
   * Finds the folders.
   *
   * @param operatingSystem the value of the system property {@code os.name}
   * @param environment the environment variables, among them {@code HOME}
   */
  static PlatformFolders of(String operatingSystem, Map<String, String> environment) {
    String system = operatingSystem.toLowerCase(Locale.ROOT);
    Path home = Path.of(environment.getOrDefault("HOME", "."));
    if (system.startsWith("windows")) {
      Path local = folder(environment, "LOCALAPPDATA", home.resolve("AppData").resolve("Local"));
      return new PlatformFolders(local.resolve(NAME), local.resolve(NAME).resolve("logs"));
    }
    if (system.startsWith("mac")) {
      Path library = home.resolve("Library");
      return new PlatformFolders(
          library.resolve("Application Support").resolve(NAME),
          library.resolve("Logs").resolve(NAME));
    }
    Path local = home.resolve(".local");
    return new PlatformFolders(
        folder(environment, "XDG_DATA_HOME", local.resolve("share")).resolve(NAME),
        folder(environment, "XDG_STATE_HOME", local.resolve("state")).resolve(NAME));
  }

  private static Path folder(Map<String, String> environment, String variable, Path otherwise) {
    Path named = Path.of(environment.getOrDefault(variable, ""));
    return named.isAbsolute() ? named : otherwise;
  }
}
