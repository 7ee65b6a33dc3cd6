package datumpeg.bridge.jobfile;

import datumpeg.analysis.job.Job;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.limits.LimitsTable;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Place;
import datumpeg.bridge.toml.TomlText;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A job file as it was read.
 *
 * @param text the whole text; its UTF-8 bytes are the file's
 * @param sha256 of those bytes, 64 lower-case hexadecimal digits: the job digest
 */
public record JobFile(Job job, String text, String sha256) {

  /**
   * Reads and validates the text of a job file.
   *
   * @param name the file's name, for the places of mistakes
   * @throws JobFileException if anything in it is wrong; the message tells all of it
   */
  public static Job read(String text, String name) {
    Mistakes mistakes = new Mistakes();
    Job job =
        new JobReader(LimitsTable.ofProgram())
            .read(TomlText.read(text, name, mistakes))
            .orElse(null);
    if (job == null || !mistakes.isEmpty()) {
      throw new JobFileException(mistakes);
    }
    return job;
  }

  /**
   * Reads and validates a job file.
   *
   * @param name the file's name as the person gave it
   * @throws JobFileException if anything in it is wrong
   * @throws InputException if there is no such file
   * @throws OuterWorldException if it cannot be read
   */
  public static JobFile load(Path file, String name) {
    return of(text(file, name), name);
  }

  /**
   * The text of a job file, whatever it says.
   *
   * @param name the file's name as the person gave it
   * @throws JobFileException if it is not in UTF-8
   * @throws InputException if there is no such file
   * @throws OuterWorldException if it cannot be read
   */
  public static String text(Path file, String name) {
    return utf8(bytes(file, name), name);
  }

  /**
   * Reads and validates the text of a job file that is kept in no file.
   *
   * @throws JobFileException if anything in it is wrong
   */
  public static JobFile of(String text, String name) {
    return new JobFile(read(text, name), text, sha256(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static byte[] bytes(Path file, String name) {
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException e) {
      throw new InputException("There is no job file " + name + ".", e);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The job file " + name + " could not be read: " + e.getMessage() + ".", e);
    }
  }

  private static String utf8(byte[] bytes, String name) {
    ByteBuffer input = ByteBuffer.wrap(bytes);
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(input).toString();
    } catch (CharacterCodingException e) {
      Mistakes mistakes = new Mistakes();
      mistakes.add(
          new Place(name, line(bytes, input.position()), 0),
          "The byte here is not UTF-8; expected a text file in UTF-8.");
      throw new JobFileException(mistakes);
    }
  }

  private static int line(byte[] bytes, int position) {
    int line = 1;
    for (int i = 0; i < position; i++) {
      line += bytes[i] == '\n' ? 1 : 0;
    }
    return line;
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
