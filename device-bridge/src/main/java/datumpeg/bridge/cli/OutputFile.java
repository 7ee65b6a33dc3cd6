package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.jspecify.annotations.Nullable;

/** A file a command was told to write. It appears whole or not at all. */
final class OutputFile {
  private OutputFile() {}

  /**
   * Writes a text, over what was there.
   *
   * @throws InputException if its folder is not there or it is a folder
   * @throws OuterWorldException if it cannot be written
   */
  static void write(DatumpegCommand program, String name, String text) {
    Path file = Records.file(program, name);
    @Nullable Path folder = file.getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw new InputException(
          "The table cannot be written to " + name + ": there is no folder " + folder + ".");
    }
    if (Files.isDirectory(file)) {
      throw new InputException("The table cannot be written to " + name + ": it is a folder.");
    }
    Path unfinished = file.resolveSibling(file.toFile().getName() + ".unfinished");
    try {
      Files.writeString(unfinished, text, StandardCharsets.UTF_8);
      Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      unfinished.toFile().delete();
      throw new OuterWorldException(
          "The table could not be written to " + name + ": " + e.getMessage() + ".", e);
    }
  }
}
