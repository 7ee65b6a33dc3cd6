package datumpeg.bridge.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.natives.NativeFiles;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Puts jSerialComm's native library into a folder of the user's own before the library is loaded.
 *
 * <p>By itself it would be unpacked into the shared temporary folder, which may be mounted noexec,
 * and where another user of the machine may have put something under its name.
 */
final class SerialNatives {
  /** The library's own property: where to look before unpacking. */
  private static final String LIBRARY_PATH = "jSerialComm.library.path";

  private SerialNatives() {}

  /**
   * Does nothing where the property is set already: by an earlier call or by the user.
   *
   * @throws OuterWorldException if there is no folder that it loads from
   */
  static synchronized void prepare() {
    if (System.getProperty(LIBRARY_PATH, "").isEmpty()) {
      Map<String, byte[]> files = files();
      NativeFiles.of("jSerialComm").put(files, folder -> use(folder, files.keySet()));
    }
    requireLoaded();
  }

  private static void use(Path folder, Set<String> files) {
    UnsatisfiedLinkError first = null;
    for (String file : files) {
      try {
        System.load(folder.resolve(file).toString());
        System.setProperty(LIBRARY_PATH, folder.toString());
        return;
      } catch (UnsatisfiedLinkError ofAnotherMachine) {
        first = first == null ? ofAnotherMachine : first;
      }
    }
    if (first != null) {
      throw first;
    }
  }

  /** The class of the library loads it as it is initialised, once in the life of the program. */
  private static void requireLoaded() {
    try {
      SerialPort.getVersion();
    } catch (LinkageError absent) {
      throw new OuterWorldException(
          "The library of serial ports, jSerialComm, does not load from "
              + System.getProperty(LIBRARY_PATH)
              + "; the log says why.",
          absent);
    }
  }

  /** The library for this system, for each kind of machine: it finds its own by trying. */
  private static Map<String, byte[]> files() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      return files("Windows", List.of("x86_64", "aarch64", "x86", "armv7"), "jSerialComm.dll");
    } else if (system.contains("mac")) {
      return files("OSX", List.of("aarch64", "x86_64", "x86"), "libjSerialComm.jnilib");
    }
    return files(
        "Linux",
        List.of("x86_64", "x86", "armv5", "armv6hf", "armv7hf", "armv8_64", "armv8_32", "ppc64le"),
        "libjSerialComm.so");
  }

  private static Map<String, byte[]> files(String system, List<String> machines, String file) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String machine : machines) {
      String inside = system + "/" + machine + "/" + file;
      try (InputStream content = SerialNatives.class.getResourceAsStream("/" + inside)) {
        if (content != null) {
          files.put(inside, content.readAllBytes());
        }
      } catch (IOException unreadable) {
        throw new UncheckedIOException("the program's own file " + inside, unreadable);
      }
    }
    return files;
  }
}
