package datumpeg.analysis.adjust;

import java.util.Collection;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Function;

/**
 * What is refused before any arithmetic. What is looked at comes as its kind and its name, which
 * are put together only when it is refused: most never are.
 */
final class Door {
  private Door() {}

  static double requireFinite(String kind, String name, String quantity, double value) {
    return require(Double.isFinite(value), kind, name, quantity, value, "");
  }

  static double requirePositive(String kind, String name, String quantity, double value) {
    return require(Double.isFinite(value) && value > 0, kind, name, quantity, value, " above 0");
  }

  static double requireNotNegative(String kind, String name, String quantity, double value) {
    return require(
        Double.isFinite(value) && value >= 0, kind, name, quantity, value, " of at least 0");
  }

  private static double require(
      boolean holds, String kind, String name, String quantity, double value, String bound) {
    if (!holds) {
      throw new IllegalArgumentException(
          kind
              + " "
              + name
              + ": "
              + quantity
              + " is "
              + value
              + ", expected a finite number"
              + bound);
    }
    return value;
  }

  static void requireName(String what, String name) {
    if (name.isBlank()) {
      throw new IllegalArgumentException(what + ": the name is blank, expected a name");
    }
  }

  static void requireName(String kind, String of, String name) {
    if (name.isBlank()) {
      requireName(kind + " " + of, name);
    }
  }

  static void requireDistinct(String what, Collection<String> names) {
    requireDistinct(what, names, name -> name);
  }

  static <T> void requireDistinct(String what, Collection<T> all, Function<T, String> naming) {
    Set<String> seen = new HashSet<>(2 * all.size());
    for (T one : all) {
      String name = naming.apply(one);
      requireName(what, name);
      if (!seen.add(name)) {
        throw new IllegalArgumentException(
            what + ": " + name + " stands twice, expected distinct names");
      }
    }
  }

  static void requireKnown(String kind, String of, String name, Collection<String> known) {
    if (!known.contains(name)) {
      throw new IllegalArgumentException(
          kind + " " + of + ": there is no " + name + "; known are " + known);
    }
  }
}
