package datumpeg.bridge.meter.learn;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.gatt.GattDecoding;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.frame.modbus.WordOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds a number in blocks of bytes of one length, one block of each reading. */
final class BlockSearch {
  /** The first of several that fit alike is proposed: wide ones hold what a long reading needs. */
  private static final List<GattFormat> PREFERRED =
      List.of(
          GattFormat.SINT32,
          GattFormat.UINT32,
          GattFormat.SINT24,
          GattFormat.UINT24,
          GattFormat.SINT16,
          GattFormat.UINT16,
          GattFormat.FLOAT32,
          GattFormat.FLOAT64,
          GattFormat.SINT8,
          GattFormat.UINT8,
          GattFormat.MEDICAL16,
          GattFormat.MEDICAL32);

  /** How the bytes of a number may lie; the letters as in {@link WordOrder}. */
  enum Laying {
    LITTLE,
    BIG,
    WORDS_SWAPPED,
    BYTES_SWAPPED;

    /** The bytes of a field, least significant first; empty where they cannot lie so. */
    private Optional<Bytes> leastFirst(Bytes field) {
      boolean words = field.length() % 2 == 0 && field.length() > 2;
      return switch (this) {
        case LITTLE -> Optional.of(field);
        case BIG -> Optional.of(field.reversed());
        case WORDS_SWAPPED ->
            words ? Optional.of(WordOrder.CDAB.leastSignificantFirst(field)) : Optional.empty();
        case BYTES_SWAPPED ->
            words ? Optional.of(WordOrder.BADC.leastSignificantFirst(field)) : Optional.empty();
      };
    }

    /** Whether the byte behind the least significant one is the next. */
    private boolean isUpward() {
      return this == LITTLE || this == BYTES_SWAPPED;
    }

    /** Where in a field the least significant byte lies. */
    private int leastAt(int size) {
      return switch (this) {
        case LITTLE -> 0;
        case BIG -> size - 1;
        case WORDS_SWAPPED -> 1;
        case BYTES_SWAPPED -> size - 2;
      };
    }
  }

  /** A number found. */
  record Field(int offset, GattFormat format, Laying laying, Scale scale) {

    /**
     * Whether a field found before says the same and more: it holds this one's bytes and further
     * ones that were always zero or the sign.
     */
    private boolean isPartOf(Field wider) {
      int size = format.byteCount();
      int other = wider.format.byteCount();
      boolean inside =
          size < other || (size == other && offset == wider.offset && laying == wider.laying);
      return inside
          && scale.equals(wider.scale)
          && format.isInteger()
          && wider.format.isInteger()
          && offset + laying.leastAt(size) == wider.offset + wider.laying.leastAt(other)
          && (size == 1 || laying.isUpward() == wider.laying.isUpward());
    }

    int end() {
      return offset + format.byteCount();
    }

    String words() {
      return format.word()
          + (laying == Laying.BIG ? ", most significant byte first," : "")
          + " at byte "
          + offset
          + ", in "
          + (scale.exponent() == 0 ? "" : "10^" + scale.exponent() + " ")
          + scale.unit().symbol()
          + TextSearch.conventions(scale.sign(), scale.zero());
    }
  }

  private final List<Bytes> blocks;
  private final List<Displayed> displayed;
  private final int length;

  /**
   * @param blocks of one length each
   * @param displayed what was shown at each
   */
  BlockSearch(List<Bytes> blocks, List<Displayed> displayed) {
    this.blocks = List.copyOf(blocks);
    this.displayed = List.copyOf(displayed);
    this.length = blocks.get(0).length();
  }

  /** The fields that fit, one of each kind that differs. */
  List<Field> fields(List<Laying> layings, int step) {
    List<Field> found = new ArrayList<>();
    for (GattFormat format : PREFERRED) {
      boolean medical = format == GattFormat.MEDICAL16 || format == GattFormat.MEDICAL32;
      if (medical && !found.isEmpty()) {
        break;
      }
      for (Laying laying : layings) {
        for (int offset = 0; offset + format.byteCount() <= length; offset += step) {
          for (Field field : fields(offset, format, laying)) {
            if (found.stream().noneMatch(field::isPartOf)) {
              found.add(field);
            }
          }
        }
      }
    }
    return found;
  }

  private List<Field> fields(int offset, GattFormat format, Laying laying) {
    List<Double> numbers = new ArrayList<>();
    for (Bytes block : blocks) {
      Optional<Double> number =
          laying
              .leastFirst(block.slice(offset, offset + format.byteCount()))
              .flatMap(bytes -> number(bytes, format));
      if (number.isEmpty()) {
        return List.of();
      }
      numbers.add(number.get());
    }
    return Scale.fitting(numbers, displayed).stream()
        .filter(scale -> format.isInteger() || scale.exponent() == 0)
        .map(scale -> new Field(offset, format, laying, scale))
        .toList();
  }

  private static Optional<Double> number(Bytes bytes, GattFormat format) {
    return new GattDecoding(new PresentationFormat(format, 0, Unit.METRE)).decode(bytes)
            instanceof Measured measured
        ? Optional.of(measured.siValue())
        : Optional.empty();
  }
}
