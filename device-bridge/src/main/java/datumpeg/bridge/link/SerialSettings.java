package datumpeg.bridge.link;

/**
 * How a serial line is set up.
 *
 * @param baud symbols a second
 * @param dataBits 5 to 8
 * @param parity the parity bit
 * @param stopBits the stop bits
 */
public record SerialSettings(int baud, int dataBits, Parity parity, StopBits stopBits) {
  /** What most meters speak (common practice, no source). */
  public static final SerialSettings DEFAULT =
      new SerialSettings(9600, 8, Parity.NONE, StopBits.ONE);

  /** The parity bit, with the letter an address writes. */
  public enum Parity {
    NONE("n"),
    EVEN("e"),
    ODD("o"),
    MARK("m"),
    SPACE("s");

    private final String letter;

    Parity(String letter) {
      this.letter = letter;
    }

    public String letter() {
      return letter;
    }
  }

  /** The stop bits, with the number an address writes. */
  public enum StopBits {
    ONE("1"),
    ONE_AND_A_HALF("1.5"),
    TWO("2");

    private final String number;

    StopBits(String number) {
      this.number = number;
    }

    public String number() {
      return number;
    }
  }

  public SerialSettings {
    if (baud < 1) {
      throw new IllegalArgumentException("baud must be at least 1, found " + baud);
    }
    if (dataBits < 5 || dataBits > 8) {
      throw new IllegalArgumentException("data bits must be 5 to 8, found " + dataBits);
    }
  }
}
