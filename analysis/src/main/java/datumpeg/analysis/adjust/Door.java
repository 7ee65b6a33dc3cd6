package datumpeg.analysis.adjust;

import java.util.Collection;
import java.util.HashSet;
import java.util.Set;

/** What is refused before any arithmetic. */
final class Door {
  private Door() {}

  static double requireFinite(String what, String quantity, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          what + ": " + quantity + " is " + value + ", expected a finite number");
    }
    return value;
  }

  static double requirePositive(String what, String quantity, double value) {
    if (!Double.isFinite(value) || value <= 0) {
      throw new IllegalArgumentException(
          what + ": " + quantity + " is " + value + ", expected a finite number above 0");
    }
    return value;
  }

  static double requireNotNegative(String what, String quantity, double value) {
    if (!Double.isFinite(value) || value < 0) {
      throw new IllegalArgumentException(
          what + ": " + quantity + " is " + value + ", expected a finite number of at least 0");
    }
    return value;
  }

  static void requireName(String what, String name) {
    if (name.isBlank()) {
      throw new IllegalArgumentException(what + ": the name is blank, expected a name");
    }
  }

  static void requireDistinct(String what, Collection<String> names) {
    Set<String> seen = new HashSet<>();
    for (String name : names) {
      requireName(what, name);
      if (!seen.add(name)) {
        throw new IllegalArgumentException(
            what + ": " + name + " stands twice, expected distinct names");
      }
    }
  }

  static void requireKnown(String what, String name, Collection<String> known) {
    if (!known.contains(name)) {
      throw new IllegalArgumentException(what + ": there is no " + name + "; known are " + known);
    }
  }
}
