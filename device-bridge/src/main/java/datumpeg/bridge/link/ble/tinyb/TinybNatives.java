package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.natives.NativeFiles;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Loads the native library. Only ever called in the child process. */
final class TinybNatives {
  /** In this order: the second needs the first. */
  private static final List<String> NAMES = List.of("libtinyb.so", "libjavatinyb.so");

  private TinybNatives() {}

  /**
   * Loads it.
   *
   * @throws IOException if there is none for this machine
   * @throws datumpeg.bridge.failure.OuterWorldException if there is no folder that it loads from
   */
  static void load() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String name : NAMES) {
      files.put(name, content("native/" + machine() + "/" + name));
    }
    NativeFiles.of("TinyB").put(files, TinybNatives::loadFrom);
  }

  private static byte[] content(String inside) throws IOException {
    try (InputStream content = TinybNatives.class.getResourceAsStream("/" + inside)) {
      if (content == null) {
        throw new IOException("there is no " + inside);
      }
      return content.readAllBytes();
    }
  }

  private static void loadFrom(Path folder) {
    NAMES.forEach(name -> System.load(folder.resolve(name).toString()));
  }

  private static String machine() {
    String machine = System.getProperty("os.arch", "").toLowerCase(Locale.ROOT);
    return switch (machine) {
      case "amd64", "x86_64" -> "linux/x86_64";
      case "x86", "i386", "i686" -> "linux/x86_32";
      case "arm" -> "arm/armv6";
      default -> "linux/" + machine;
    };
  }
}
