package datumpeg.bridge.link.serial;

import datumpeg.bridge.link.NativeFiles;
import java.io.IOException;
import java.io.InputStream;
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
      NativeFiles files = NativeFiles.of("jserialcomm");
      unpack(files);
      System.setProperty(LIBRARY_PATH, files.folder().toString());
    } catch (IOException | UnsupportedOperationException notPrivate) {
      LOG.info("no private folder for the serial library; it unpacks itself", notPrivate);
    }
  }

  /** The folders of the library's jar for this system, with its file. */
  private static void unpack(NativeFiles files) throws IOException {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      unpack(files, "Windows", List.of("x86_64", "aarch64", "x86", "armv7"), "jSerialComm.dll");
    } else if (system.contains("mac")) {
      unpack(files, "OSX", List.of("aarch64", "x86_64", "x86"), "libjSerialComm.jnilib");
    } else {
      unpack(
          files,
          "Linux",
          List.of(
              "x86_64", "x86", "armv5", "armv6hf", "armv7hf", "armv8_64", "armv8_32", "ppc64le"),
          "libjSerialComm.so");
    }
  }

  private static void unpack(NativeFiles files, String system, List<String> machines, String file)
      throws IOException {
    for (String machine : machines) {
      String inside = system + "/" + machine + "/" + file;
      try (InputStream content = SerialNatives.class.getResourceAsStream("/" + inside)) {
        if (content != null) {
          files.place(content.readAllBytes(), inside);
        }
      }
    }
  }
}
