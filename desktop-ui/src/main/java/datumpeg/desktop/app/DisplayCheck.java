package datumpeg.desktop.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Tells, before the toolkit is started, whether this machine can show a window: JavaFX itself ends
 * with a stack trace, or draws no text, when a library is missing.
 *
 * <p>On Windows and macOS all that JavaFX needs is part of the system, so only other systems are
 * looked at. Libraries and packages were found by starting a window on a bare Debian 12.
 *
 * @param operatingSystem the value of the system property {@code os.name}
 * @param environment the environment variables
 * @param headlessToolkit true when a toolkit that needs no display was chosen, as tests do
 * @param libraryPresent whether a shared library of this file name can be found
 */
public record DisplayCheck(
    String operatingSystem,
    Map<String, String> environment,
    boolean headlessToolkit,
    Predicate<String> libraryPresent) {

  private static final List<Needed> NEEDED =
      List.of(
          new Needed("libgtk-3.so.0", "libgtk-3-0", true),
          new Needed("libXtst.so.6", "libxtst6", true),
          new Needed("libpangoft2-1.0.so.0", "libpangoft2-1.0-0", false));

  public DisplayCheck {
    environment = Map.copyOf(environment);
  }

  /** The check of this process. */
  public static DisplayCheck ofThisMachine(Map<String, String> environment) {
    List<Path> folders = libraryFolders(Path.of("/"), environment);
    return new DisplayCheck(
        System.getProperty("os.name", ""),
        environment,
        "Monocle".equals(System.getProperty("glass.platform")),
        name -> isIn(folders, name));
  }

  /** A sentence that says what is missing and what to do, or nothing when a window can open. */
  public Optional<String> whatIsMissing() {
    String system = operatingSystem.toLowerCase(Locale.ROOT);
    if (system.startsWith("windows") || system.startsWith("mac")) {
      return Optional.empty();
    }
    List<String> packages =
        NEEDED.stream()
            .filter(needed -> needed.isNeeded(headlessToolkit))
            .filter(needed -> !libraryPresent.test(needed.file()))
            .map(Needed::debianPackage)
            .toList();
    if (!packages.isEmpty()) {
      return Optional.of(
          "The window needs libraries that this machine lacks. On Debian or Ubuntu: apt-get install "
              + String.join(" ", packages)
              + ".");
    }
    if (!headlessToolkit && environment.getOrDefault("DISPLAY", "").isEmpty()) {
      return Optional.of(
          "The window needs a display and none is set ($DISPLAY is empty). Start it from a graphical"
              + " session, or use the other commands, which need no display.");
    }
    return Optional.empty();
  }

  /**
   * Where shared libraries lie under {@code root}: the folders of common Linux layouts and those of
   * {@code LD_LIBRARY_PATH}.
   */
  static List<Path> libraryFolders(Path root, Map<String, String> environment) {
    List<Path> folders = new ArrayList<>();
    Stream.of(environment.getOrDefault("LD_LIBRARY_PATH", "").split(":", -1))
        .filter(folder -> !folder.isEmpty())
        .forEach(folder -> folders.add(Path.of(folder)));
    for (String parent : List.of("usr/lib", "lib", "usr/local/lib")) {
      for (String triplet :
          List.of("", "x86_64-linux-gnu", "aarch64-linux-gnu", "arm-linux-gnueabihf")) {
        folders.add(root.resolve(parent).resolve(triplet));
      }
    }
    folders.add(root.resolve("usr/lib64"));
    folders.add(root.resolve("lib64"));
    return List.copyOf(folders);
  }

  /**
   * Where not even the C library is found the layout is one we do not know, and nothing is claimed
   * to be missing.
   */
  static boolean isIn(List<Path> folders, String name) {
    return lies(folders, name) || !lies(folders, "libc.so.6");
  }

  private static boolean lies(List<Path> folders, String name) {
    return folders.stream().anyMatch(folder -> Files.exists(folder.resolve(name)));
  }

  private record Needed(String file, String debianPackage, boolean forDisplayOnly) {
    boolean isNeeded(boolean headless) {
      return !(headless && forDisplayOnly);
    }
  }
}
