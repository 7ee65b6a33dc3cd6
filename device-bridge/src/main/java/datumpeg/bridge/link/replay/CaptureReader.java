package datumpeg.bridge.link.replay;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Reads a capture line by line.
 *
 * <p>A last line without its line end that cannot be read is torn: the program or the machine died
 * while writing it. It is left out, and {@link #tornLineNumber} tells. Any other damage is an
 * {@link InputException} that names file and line. One thread.
 */
public final class CaptureReader implements AutoCloseable {
  /** More than any line this program writes; keeps memory bounded whatever the file is. */
  private static final int MAXIMUM_LINE_BYTES = 1 << 20;

  private final InputStream in;
  private final String name;
  private final CaptureHeader header;
  private long lineNumber;
  private boolean lineEnded;
  private long expectedNumber = 1;
  private OptionalLong tornLineNumber = OptionalLong.empty();

  /**
   * A reader of a stream, which it closes.
   *
   * @param name what to call the stream in messages
   * @throws InputException if the first line is not the header of a capture
   * @throws OuterWorldException if the stream cannot be read
   */
  public CaptureReader(InputStream in, String name) {
    this.in = new BufferedInputStream(in);
    this.name = name;
    this.header = readHeader();
  }

  /**
   * Opens a file.
   *
   * @throws InputException if there is no such file, or its first line is not the header of a
   *     capture
   * @throws OuterWorldException if it cannot be read
   */
  public static CaptureReader open(Path file) {
    try {
      InputStream in = Files.newInputStream(file);
      try {
        return new CaptureReader(in, file.toString());
      } catch (RuntimeException refused) {
        in.close();
        throw refused;
      }
    } catch (NoSuchFileException missing) {
      throw new InputException("There is no capture " + file + ".", missing);
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture " + file + " could not be read: " + refused.getMessage() + ".", refused);
    }
  }

  public CaptureHeader header() {
    return header;
  }

  /**
   * The number of the line that was torn, the header being line 1; known once {@link #next} is
   * empty.
   */
  public OptionalLong tornLineNumber() {
    return tornLineNumber;
  }

  /** The number of the line last read, the header being line 1. */
  public long lineNumber() {
    return lineNumber;
  }

  /**
   * The next line, or nothing at the end.
   *
   * @throws InputException if the line is damaged
   * @throws OuterWorldException if it cannot be read
   */
  public Optional<CaptureEntry> next() {
    byte[] line = readLine();
    if (line.length == 0 && !lineEnded) {
      return Optional.empty();
    }
    try {
      CaptureEntry entry = CaptureLineParser.entry(text(line));
      check(entry);
      return Optional.of(entry);
    } catch (CaptureDamage damage) {
      if (lineEnded) {
        throw damaged(damage);
      }
      tornLineNumber = OptionalLong.of(lineNumber);
      return Optional.empty();
    }
  }

  private void check(CaptureEntry entry) throws CaptureDamage {
    if (entry.number() != expectedNumber) {
      throw new CaptureDamage("'n' is %d; expected %d".formatted(entry.number(), expectedNumber));
    }
    if (entry instanceof Transfer transfer && !header.links().containsKey(transfer.link())) {
      throw new CaptureDamage("link '" + transfer.link() + "' is not in the first line");
    }
    expectedNumber++;
  }

  private CaptureHeader readHeader() {
    byte[] line = readLine();
    try {
      return CaptureLineParser.header(text(line));
    } catch (CaptureDamage damage) {
      throw new InputException(
          "%s is not a capture this program reads: in its first line %s."
              .formatted(name, damage.getMessage()),
          damage);
    }
  }

  private static String text(byte[] line) throws CaptureDamage {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(line)).toString();
    } catch (CharacterCodingException notText) {
      throw new CaptureDamage("it is not UTF-8 text", notText);
    }
  }

  private byte[] readLine() {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    lineEnded = false;
    lineNumber++;
    try {
      for (int value = in.read(); value >= 0; value = in.read()) {
        if (value == '\n') {
          lineEnded = true;
          break;
        }
        if (line.size() == MAXIMUM_LINE_BYTES) {
          throw damaged(new CaptureDamage("it is longer than " + MAXIMUM_LINE_BYTES + " bytes"));
        }
        line.write(value);
      }
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture %s could not be read at line %d: %s."
              .formatted(name, lineNumber, refused.getMessage()),
          refused);
    }
    return line.toByteArray();
  }

  private InputException damaged(CaptureDamage damage) {
    return new InputException(
        "The capture %s is damaged at line %d: %s."
            .formatted(name, lineNumber, damage.getMessage()),
        damage);
  }

  @Override
  public void close() {
    try {
      in.close();
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture " + name + " could not be closed: " + refused.getMessage() + ".", refused);
    }
  }
}
