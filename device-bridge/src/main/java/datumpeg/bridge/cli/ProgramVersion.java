package datumpeg.bridge.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.IVersionProvider;

/**
 * What {@code --version} prints: the program's version, then the Java and the system it runs on.
 */
public final class ProgramVersion implements IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {
      "datumpeg " + number(),
      "Java "
          + System.getProperty("java.version")
          + ", "
          + System.getProperty("os.name")
          + " "
          + System.getProperty("os.arch")
    };
  }

  /** The version in the parent POM, written into the resource by the build. */
  public static String number() {
    try (InputStream stream = ProgramVersion.class.getResourceAsStream("version.txt")) {
      if (stream == null) {
        throw new IllegalStateException("The resource version.txt is not beside ProgramVersion.");
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
