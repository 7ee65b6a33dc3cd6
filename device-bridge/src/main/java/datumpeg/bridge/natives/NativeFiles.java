package datumpeg.bridge.natives;

import datumpeg.bridge.failure.OuterWorldException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Puts native libraries into a folder of the user's own. The shared temporary folder may be mounted
 * noexec, and another user of the machine may have put something under a library's name there.
 *
 * <p>Where the user's folder takes none, a fresh folder below the temporary one does, for as long
 * as the program runs. Immutable.
 */
public final class NativeFiles {
  /** As large as the largest library that is carried. */
  private static final int PROBE_BYTES = 1 << 21;

  private static final String HELP =
      "Make room in one of these folders, or set XDG_CACHE_HOME to a folder that this user may"
          + " write and that programs may run from (not mounted noexec).";

  private final String library;
  private final Path cache;
  private final Path temporary;

  NativeFiles(String library, Path cache, Path temporary) {
    this.library = library;
    this.cache = cache.resolve("datumpeg").resolve(library.toLowerCase(Locale.ROOT));
    this.temporary = temporary;
  }

  /**
   * The folders for one library.
   *
   * @param library its name, as a person would say it
   */
  public static NativeFiles of(String library) {
    return new NativeFiles(library, cache(), Path.of(System.getProperty("java.io.tmpdir", "/tmp")));
  }

  private static Path cache() {
    String named = System.getenv("XDG_CACHE_HOME");
    String home = System.getProperty("user.home", "");
    return named != null && !named.isBlank() ? Path.of(named) : Path.of(home).resolve(".cache");
  }

  /** What is done with a folder once the files are in it. */
  @FunctionalInterface
  public interface Use {
    /**
     * Loads what is there.
     *
     * @throws UnsatisfiedLinkError if it does not load from there
     */
    void of(Path folder) throws IOException;
  }

  /**
   * Puts the files into the first folder that takes them and from which they can be used.
   *
   * @param files by their path below the folder
   * @throws OuterWorldException if there is none
   */
  public void put(Map<String, byte[]> files, Use use) {
    List<String> refusals = new ArrayList<>();
    if (!isPutSomewhere(files, use, refusals)) {
      throw new OuterWorldException(
          "The native library of "
              + library
              + " could be unpacked and loaded "
              + nowhere(refusals)
              + HELP);
    }
  }

  /** What stands in the way of any library, with what helps; empty where nothing does. */
  public static Optional<Obstacle> obstacle() {
    return of("doctor").probed();
  }

  /**
   * Why libraries can be put nowhere.
   *
   * @param found a sentence
   * @param help what a person can do, a sentence
   */
  public record Obstacle(String found, String help) {}

  Optional<Obstacle> probed() {
    List<String> refusals = new ArrayList<>();
    return isPutSomewhere(
            Map.of("probe", new byte[PROBE_BYTES]),
            folder -> Files.delete(folder.resolve("probe")),
            refusals)
        ? Optional.empty()
        : Optional.of(new Obstacle("They could be unpacked " + nowhere(refusals).strip(), HELP));
  }

  private static String nowhere(List<String> refusals) {
    return "neither in " + String.join(" nor in ", refusals) + ". ";
  }

  private boolean isPutSomewhere(Map<String, byte[]> files, Use use, List<String> refusals) {
    return isPut(cache, files, use, refusals) || isPutAside(files, use, refusals);
  }

  private static boolean isPut(
      Path folder, Map<String, byte[]> files, Use use, List<String> refusals) {
    try {
      keepPrivate(Files.createDirectories(folder));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        place(folder.resolve(file.getKey()), file.getValue());
      }
      use.of(folder);
      return true;
    } catch (IOException | UnsatisfiedLinkError refused) {
      refusals.add(folder + " (" + Refusal.words(refused) + ")");
      return false;
    }
  }

  private static void keepPrivate(Path folder) throws IOException {
    if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
    }
  }

  /**
   * The file is written beside and moved, so that a second program starting now sees all of it or
   * nothing.
   */
  private static void place(Path target, byte[] content) throws IOException {
    if (Files.exists(target) && Arrays.equals(Files.readAllBytes(target), content)) {
      return;
    }
    Path parent = Files.createDirectories(target.resolveSibling("."));
    Path beside = Files.createTempFile(parent, "new", ".part");
    try {
      Files.write(beside, content);
      Files.move(
          beside, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  private boolean isPutAside(Map<String, byte[]> files, Use use, List<String> refusals) {
    try {
      Path fresh = Files.createTempDirectory(temporary, "datumpeg-native");
      files.keySet().forEach(file -> forgetAtTheEnd(fresh, Path.of(file)));
      return isPut(fresh, files, use, refusals);
    } catch (IOException refused) {
      refusals.add("the temporary folder " + temporary + " (" + Refusal.words(refused) + ")");
      return false;
    }
  }

  /** What is named last is deleted first. */
  private static void forgetAtTheEnd(Path folder, Path file) {
    File inside = folder.toFile();
    inside.deleteOnExit();
    for (Path step : file) {
      inside = new File(inside, step.toString());
      inside.deleteOnExit();
    }
  }
}
