package datumpeg.analysis.tell;

/** Targets as a person says them. */
final class Places {
  private Places() {}

  static String range(String target) {
    return target.replaceFirst("^([A-Z]?\\d+)-([A-Z]?\\d+)", "$1 to $2");
  }

  static String direction(String target) {
    return target.replace("/", ", ");
  }

  static String level(String target) {
    return target.replaceFirst("/(base|eave|apex)$", " at the $1");
  }

  /** A2-A3/base as a person says it: A2-A3 at the base. */
  static String bay(String target) {
    return target.replaceFirst("/", " at the ");
  }

  /** A target without what is asked of it: line.A of line.A/chord. */
  static String before(String target) {
    return target.replaceFirst("/.*", "");
  }

  static String end(boolean n) {
    return n ? "end n" : "end 1";
  }
}
