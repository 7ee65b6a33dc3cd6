package datumpeg.bridge.toml;

/** How small a quantity may be. */
public enum Bound {
  ANY("any value"),
  NOT_NEGATIVE("0 or more"),
  POSITIVE("more than 0");

  private final String words;

  Bound(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  boolean admits(double value) {
    return switch (this) {
      case ANY -> true;
      case NOT_NEGATIVE -> value >= 0;
      case POSITIVE -> value > 0;
    };
  }
}
