package datumpeg.bridge.frame;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;

/** A run of bytes that nobody can alter. Immutable. */
public final class Bytes {
  private static final Bytes EMPTY = new Bytes(new byte[0]);

  private final byte[] content;

  private Bytes(byte[] content) {
    this.content = content;
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

  /** All of them, one behind the other. */
  public static Bytes joined(List<Bytes> parts) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    parts.forEach(part -> joined.writeBytes(part.content));
    return new Bytes(joined.toByteArray());
  }

  public int length() {
    return content.length;
  }

  public boolean isEmpty() {
    return content.length == 0;
  }

  /** The byte at an index, 0 to 255. */
  public int at(int index) {
    return content[index] & 0xFF;
  }

  /** The bytes from {@code from} (inclusive) to {@code to} (exclusive). */
  public Bytes slice(int from, int to) {
    return new Bytes(Arrays.copyOfRange(content, from, to));
  }

  /** The bytes from {@code from} to {@code to} (exclusive), each as its character of ISO 8859-1. */
  String latinText(int from, int to) {
    return new String(content, from, to - from, StandardCharsets.ISO_8859_1);
  }

  public Bytes plus(Bytes other) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream(length() + other.length());
    joined.writeBytes(content);
    joined.writeBytes(other.content);
    return new Bytes(joined.toByteArray());
  }

  /** The bytes from last to first. */
  public Bytes reversed() {
    byte[] turned = new byte[content.length];
    for (int index = 0; index < turned.length; index++) {
      turned[index] = content[turned.length - 1 - index];
    }
    return new Bytes(turned);
  }

  /** Lower-case hexadecimal digits, two a byte, nothing between. */
  public String hex() {
    return HexFormat.of().formatHex(content);
  }

  public byte[] toArray() {
    return content.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Bytes that && Arrays.equals(content, that.content);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(content);
  }

  @Override
  public String toString() {
    return "Bytes[" + hex() + "]";
  }
}
