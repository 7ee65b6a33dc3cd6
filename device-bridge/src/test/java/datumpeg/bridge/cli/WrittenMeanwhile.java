package datumpeg.bridge.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file that a process of the test's own still writes. */
final class WrittenMeanwhile {
  private WrittenMeanwhile() {}

  /** What is in it by now; its last letter may be there in part only, which is no error. */
  static String text(Path file) throws IOException {
    return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
  }
}
