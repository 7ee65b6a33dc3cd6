package datumpeg.bridge.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;

/**
 * A folder of the user's own for native libraries. The shared temporary folder may be mounted
 * noexec, and another user of the machine may have put something under a library's name there.
 * Immutable.
 */
public final class NativeFiles {
  private final Path folder;

  private NativeFiles(Path folder) {
    this.folder = folder;
  }

  /**
   * The folder for one library.
   *
   * @throws IOException if it cannot be made, or not be kept private
   */
  public static NativeFiles of(String library) throws IOException {
    Path folder = cache().resolve("datumpeg").resolve(library);
    Files.createDirectories(folder);
    if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
    }
    return new NativeFiles(folder);
  }

  private static Path cache() {
    String cache = System.getenv("XDG_CACHE_HOME");
    String home = System.getProperty("user.home", "");
    return cache != null && !cache.isBlank() ? Path.of(cache) : Path.of(home).resolve(".cache");
  }

  public Path folder() {
    return folder;
  }

  /**
   * Puts a file there. It is written beside and moved, so that a second program starting now sees
   * all of it or nothing.
   *
   * @param inside its path below the folder
   */
  public Path place(byte[] content, String inside) throws IOException {
    Path target = folder.resolve(inside);
    if (Files.exists(target) && Arrays.equals(Files.readAllBytes(target), content)) {
      return target;
    }
    Path parent = Files.createDirectories(target.resolveSibling("."));
    Path beside = Files.createTempFile(parent, "new", ".part");
    Files.write(beside, content);
    Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    return target;
  }
}
