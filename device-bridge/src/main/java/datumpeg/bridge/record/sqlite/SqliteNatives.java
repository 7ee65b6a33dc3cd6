package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.natives.NativeFiles;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * Puts SQLite's native library into a folder of the user's own before the driver loads it. By
 * itself the driver would unpack it into the temporary folder at every start.
 */
final class SqliteNatives {
  /** The driver's own properties: where its library is. */
  private static final String PATH = "org.sqlite.lib.path";

  private static final String NAME = "org.sqlite.lib.name";

  private SqliteNatives() {}

  /**
   * Does nothing where the property is set already: by an earlier call, by the launcher, by the
   * user.
   *
   * @throws OuterWorldException if there is no folder that it loads from
   */
  static synchronized void prepare() {
    String name = LibraryLoaderUtil.getNativeLibName();
    if (!System.getProperty(PATH, "").isEmpty()) {
      return;
    }
    String inside = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
    try (InputStream content = SqliteNatives.class.getResourceAsStream(inside)) {
      if (content != null) { // else the machine may have one of its own, which the driver looks for
        NativeFiles.of("SQLite")
            .put(Map.of(name, content.readAllBytes()), folder -> use(folder, name));
      }
    } catch (IOException unreadable) {
      throw new UncheckedIOException("the program's own file " + inside, unreadable);
    }
  }

  private static void use(Path folder, String name) {
    System.load(folder.resolve(name).toString());
    System.setProperty(PATH, folder.toString());
    System.setProperty(NAME, name);
  }
}
