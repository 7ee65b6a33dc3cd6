package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.link.NativeFiles;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;

/** Loads the native library. Only ever called in the child process. */
final class TinybNatives {
  private TinybNatives() {}

  /**
   * Loads it.
   *
   * @throws IOException if there is none for this machine, or no private folder to put it in
   */
  static void load() throws IOException {
    NativeFiles files = NativeFiles.of("tinyb");
    // In this order: the second needs the first.
    for (String name : new String[] {"libtinyb.so", "libjavatinyb.so"}) {
      String inside = "native/" + machine() + "/" + name;
      try (InputStream content = TinybNatives.class.getResourceAsStream("/" + inside)) {
        if (content == null) {
          throw new IOException("there is no " + inside);
        }
        System.load(files.place(content.readAllBytes(), inside).toString());
      }
    }
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
