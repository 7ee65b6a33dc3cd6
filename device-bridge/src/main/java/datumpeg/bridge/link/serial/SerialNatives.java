package datumpeg.bridge.link.serial;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Puts jSerialComm's native library into a folder of the user's own before the library is loaded.
 *
 * <p>By itself it would be unpacked into the shared temporary folder, which may be mounted noexec,
 * and where another user of the machine may have put something under its name. If the private
 * folder cannot be made, the library falls back on its own ways.
 */
final class SerialNatives {
  private static final Logger LOG = LoggerFactory.getLogger(SerialNatives.class);

  /** The library's own property: where to look before unpacking. */
  private static final String LIBRARY_PATH = "jSerialComm.library.path";

  private SerialNatives() {}

  /** Does nothing where the property is set already: by an earlier call or by the user. */
  static synchronized void prepare() {
    if (!System.getProperty(LIBRARY_PATH, "").isEmpty()) {
      return;
    }
    try {
      Path folder = privateFolder().resolve("jserialcomm");
      unpack(folder);
      System.setProperty(LIBRARY_PATH, folder.toString());
    } catch (IOException | UnsupportedOperationException notPrivate) {
      LOG.info("no private folder for the serial library; it unpacks itself", notPrivate);
    }
  }

  private static Path privateFolder() {
    String cache = System.getenv("XDG_CACHE_HOME");
    String home = System.getProperty("user.home", "");
    Path base =
        cache != null && !cache.isBlank() ? Path.of(cache) : Path.of(home).resolve(".cache");
    return base.resolve("datumpeg");
  }

  /** The folders of the library's jar for this system, with its file. */
  private static void unpack(Path folder) throws IOException {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      unpack(folder, "Windows", List.of("x86_64", "aarch64", "x86", "armv7"), "jSerialComm.dll");
    } else if (system.contains("mac")) {
      unpack(folder, "OSX", List.of("aarch64", "x86_64", "x86"), "libjSerialComm.jnilib");
    } else {
      unpack(
          folder,
          "Linux",
          List.of(
              "x86_64", "x86", "armv5", "armv6hf", "armv7hf", "armv8_64", "armv8_32", "ppc64le"),
          "libjSerialComm.so");
    }
  }

  private static void unpack(Path folder, String system, List<String> machines, String file)
      throws IOException {
    makePrivate(folder);
    for (String machine : machines) {
      String inside = system + "/" + machine + "/" + file;
      Path target = folder.resolve(system).resolve(machine).resolve(file);
      try (InputStream content = SerialNatives.class.getResourceAsStream("/" + inside)) {
        if (content != null) {
          place(content.readAllBytes(), target);
        }
      }
    }
  }

  /** Written beside and moved, so that a second program starting now sees all of it or nothing. */
  private static void place(byte[] content, Path target) throws IOException {
    if (Files.exists(target) && Arrays.equals(Files.readAllBytes(target), content)) {
      return;
    }
    Files.createDirectories(target.getParent());
    Path beside = Files.createTempFile(target.getParent(), "new", ".part");
    Files.write(beside, content);
    Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }

  private static void makePrivate(Path folder) throws IOException {
    Files.createDirectories(folder);
    if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
    }
  }
}
