package datumpeg.bridge.frame;

/**
 * What a plain line looks like: where its digits stand and what stands around them. A meter's next
 * line nearly always looks like the one before, and is held against it eight bytes at a time, of
 * eight the first one lowest. Immutable.
 */
final class PlainLayout {
  /** How much of a line is looked at: its number within the first half, its end within both. */
  static final int BYTES = 2 * Long.BYTES;

  private static final long HIGH_BITS = 0x8080808080808080L;
  private static final long ZEROS = 0x3030303030303030L;
  private static final long LOW_HALVES = 0x0F0F0F0F0F0F0F0FL;
  private static final long PAIRS = 0x00FF00FF00FF00FFL;
  private static final long FOURS = 0x0000FFFF0000FFFFL;
  private static final long EIGHT = 0xFFFFFFFFL;

  private final long beforeMark;
  private final long behindMark;
  private final long digitBits;
  private final long around;
  private final long aroundMask;
  private final long behind;
  private final long behindMask;
  private final int shift;

  /**
   * The layout of a line.
   *
   * @param shape for which {@link #covers} holds
   * @param word the line's first eight bytes
   * @param nextWord the eight behind them
   */
  PlainLayout(PlainShape shape, long word, long nextWord) {
    long number = firstBytes(shape.textEnd()) & ~firstBytes(shape.first());
    this.beforeMark = number & firstBytes(shape.mark());
    this.behindMark = number & ~firstBytes(shape.mark() + 1);
    this.digitBits = (beforeMark | behindMark) & HIGH_BITS;
    this.aroundMask = firstBytes(shape.next()) & ~(beforeMark | behindMark);
    this.around = word & aroundMask;
    this.behindMask = firstBytes(shape.next() - Long.BYTES);
    this.behind = nextWord & behindMask;
    this.shift = Byte.SIZE * (Long.BYTES - shape.textEnd());
  }

  /** Whether lines of this shape are short enough. */
  static boolean covers(PlainShape shape) {
    return shape.isTerminated() && shape.textEnd() <= Long.BYTES && shape.next() <= BYTES;
  }

  /** All bits of so many bytes from the first one, at most eight; none of none or fewer. */
  private static long firstBytes(int count) {
    return count <= 0 ? 0 : -1L >>> (Byte.SIZE * Math.max(0, Long.BYTES - count));
  }

  /** Whether what begins with these bytes looks like this line up to where the next begins. */
  boolean fits(long word, long nextWord) {
    return (((word ^ around) & aroundMask)
            | ((nextWord ^ behind) & behindMask)
            | (noDigits(word) & digitBits))
        == 0;
  }

  /** Sets the highest bit of each byte that is no digit; other bits mean nothing. */
  private static long noDigits(long word) {
    long difference = word ^ ZEROS; // 0 to 9 of a digit, more of any other byte
    return ((difference & ~HIGH_BITS) + 0x7676767676767676L) | difference;
  }

  /**
   * The digits of a line that fits, read as one whole number.
   *
   * @param word its first eight bytes
   */
  long number(long word) {
    // The gap of the mark is closed and the last digit moved to the last byte; before all are
    // zeros.
    long closed = ((word & beforeMark) << Byte.SIZE) | (word & behindMark);
    long ones = (closed << shift) & LOW_HALVES;
    // Neighbours are put together, all at once: two to a pair, two pairs to four digits, then
    // eight.
    long pairs = (10 * ones + (ones >>> 8)) & PAIRS;
    long fours = (100 * pairs + (pairs >>> 16)) & FOURS;
    return (10_000 * fours + (fours >>> 32)) & EIGHT;
  }
}
