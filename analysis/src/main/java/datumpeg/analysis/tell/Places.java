package datumpeg.analysis.tell;

import java.util.regex.Pattern;

/** Targets as a person says them. */
final class Places {
  private static final Pattern RANGE = Pattern.compile("^([A-Z]?\\d+)-([A-Z]?\\d+)");
  private static final Pattern LEVEL = Pattern.compile("/(base|eave|apex)$");

  private Places() {}

  static String range(String target) {
    return RANGE.matcher(target).replaceFirst("$1 to $2");
  }

  static String direction(String target) {
    return target.replace("/", ", ");
  }

  static String level(String target) {
    return LEVEL.matcher(target).replaceFirst(" at the $1");
  }

  /** A2-A3/base as a person says it: A2-A3 at the base. */
  static String bay(String target) {
    return target.replaceFirst("/", " at the ");
  }

  /** A target without what is asked of it: line.A of line.A/chord. */
  static String before(String target) {
    int slash = target.indexOf('/');
    return slash < 0 ? target : target.substring(0, slash);
  }

  static String end(boolean n) {
    return n ? "end n" : "end 1";
  }
}
