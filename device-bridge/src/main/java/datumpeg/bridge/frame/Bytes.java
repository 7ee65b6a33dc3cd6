package datumpeg.bridge.frame;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;

/** A run of bytes that nobody can alter. A slice shares what it was cut out of. Immutable. */
public final class Bytes {
  private static final Bytes EMPTY = new Bytes(new byte[0]);

  private final byte[] content;
  private final int start;
  private final int length;

  private Bytes(byte[] content) {
    this(content, 0, content.length);
  }

  private Bytes(byte[] content, int start, int length) {
    this.content = content;
    this.start = start;
    this.length = length;
  }

  public static Bytes empty() {
    return EMPTY;
  }

  /** A copy of the array as it is now. */
  public static Bytes of(byte... content) {
    return new Bytes(content.clone());
  }

  /** A copy of {@code length} bytes from {@code offset}. */
  public static Bytes of(byte[] content, int offset, int length) {
    return new Bytes(Arrays.copyOfRange(content, offset, offset + length));
  }

  /**
   * Bytes from hexadecimal digits, two a byte, nothing between.
   *
   * @throws IllegalArgumentException if the text is anything else
   */
  public static Bytes ofHex(String hex) {
    return new Bytes(HexFormat.of().parseHex(hex));
  }

  /** The text in UTF-8. */
  static Bytes ofText(String text) {
    return new Bytes(text.getBytes(StandardCharsets.UTF_8));
  }

  /** All of them, one behind the other. */
  public static Bytes joined(List<Bytes> parts) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    parts.forEach(part -> joined.write(part.content, part.start, part.length));
    return new Bytes(joined.toByteArray());
  }

  public int length() {
    return length;
  }

  public boolean isEmpty() {
    return length == 0;
  }

  /** The byte at an index, 0 to 255. */
  public int at(int index) {
    return content[start + Objects.checkIndex(index, length)] & 0xFF;
  }

  /** Where the first CR or LF stands at or after an index; {@link #length()} without one. */
  int lineEnd(int from) {
    int end = start + length;
    for (int index = start + from; index < end; index++) {
      byte value = content[index];
      if (value == '\r' || value == '\n') {
        return index - start;
      }
    }
    return length;
  }

  /** The bytes from {@code from} (inclusive) to {@code to} (exclusive). */
  public Bytes slice(int from, int to) {
    Objects.checkFromToIndex(from, to, length);
    return new Bytes(content, start + from, to - from);
  }

  /** The bytes from {@code from} to {@code to} (exclusive) as text in UTF-8. */
  String text(int from, int to) {
    Objects.checkFromToIndex(from, to, length);
    return new String(content, start + from, to - from, StandardCharsets.UTF_8);
  }

  /** The bytes to be read one or eight at a time, of eight the first one lowest. */
  ByteBuffer buffer() {
    return ByteBuffer.wrap(content, start, length)
        .slice()
        .asReadOnlyBuffer()
        .order(ByteOrder.LITTLE_ENDIAN);
  }

  public Bytes plus(Bytes other) {
    return joined(List.of(this, other));
  }

  /** The bytes from last to first. */
  public Bytes reversed() {
    byte[] turned = new byte[length];
    for (int index = 0; index < length; index++) {
      turned[index] = content[start + length - 1 - index];
    }
    return new Bytes(turned);
  }

  /** Lower-case hexadecimal digits, two a byte, nothing between. */
  public String hex() {
    return HexFormat.of().formatHex(content, start, start + length);
  }

  public byte[] toArray() {
    return Arrays.copyOfRange(content, start, start + length);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Bytes that
        && Arrays.equals(
            content, start, start + length, that.content, that.start, that.start + that.length);
  }

  @Override
  public int hashCode() {
    return ByteBuffer.wrap(content, start, length).hashCode();
  }

  @Override
  public String toString() {
    return "Bytes[" + hex() + "]";
  }
}
