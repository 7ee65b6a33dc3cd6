package datumpeg.bridge.doctor;

import datumpeg.bridge.natives.NativeFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * The machine as the examination sees it; a test hands in its own.
 *
 * @param root the folder that stands for {@code /}
 * @param operatingSystem the value of the system property {@code os.name}
 * @param architecture the value of the system property {@code os.arch}
 * @param environment the environment variables
 * @param user who runs the program
 * @param sound whether a tone can be played
 * @param natives why native libraries can be put nowhere; empty where they can
 */
public record Machine(
    Path root,
    String operatingSystem,
    String architecture,
    Map<String, String> environment,
    String user,
    BooleanSupplier sound,
    Supplier<Optional<NativeFiles.Obstacle>> natives) {

  public Machine {
    environment = Map.copyOf(environment);
  }

  Path path(String absolute) {
    return root.resolve(absolute.substring(1));
  }

  boolean has(String absolute) {
    return Files.exists(path(absolute));
  }

  boolean isLinux() {
    return operatingSystem.startsWith("Linux");
  }

  /** The names in a folder that begin with one of these; none if it cannot be read. */
  List<String> names(String folder, List<String> beginnings) {
    try (Stream<Path> files = Files.list(path(folder))) {
      return files
          .map(file -> file.toFile().getName())
          .filter(name -> beginnings.stream().anyMatch(name::startsWith))
          .sorted()
          .toList();
    } catch (IOException | SecurityException e) {
      return List.of();
    }
  }

  /** The lines of a file; empty if it cannot be read. */
  Optional<List<String>> lines(String absolute) {
    try {
      return Optional.of(new ArrayList<>(Files.readAllLines(path(absolute))));
    } catch (IOException | SecurityException e) {
      return Optional.empty();
    }
  }
}
