package datumpeg.bridge.mistake;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The known word a person most likely meant. */
public final class Nearest {
  private Nearest() {}

  /**
   * The known word with the fewest letters added, dropped, changed or swapped with their neighbour,
   * if those are few for its length: at most a third of it, and one is always allowed. Case and the
   * kind of dash do not count.
   *
   * <p>Optimal string alignment distance: F. J. Damerau, A technique for computer detection and
   * correction of spelling errors, Comm. ACM 7 (1964); dynamic programme after R. A. Wagner and M.
   * J. Fischer, J. ACM 21 (1974).
   */
  public static Optional<String> of(String word, Collection<String> known) {
    return known.stream()
        .filter(
            candidate ->
                distance(word, candidate)
                    <= Math.max(1, Math.max(word.length(), candidate.length()) / 3))
        .min(Comparator.comparingInt(candidate -> distance(word, candidate)));
  }

  /** {@code the nearest is 'span'}, or else {@code known are 'span', 'length'}. */
  public static String hint(String word, Collection<String> known) {
    return of(word, known)
        .map(nearest -> "the nearest is '" + nearest + "'")
        .orElseGet(
            () -> known.isEmpty() ? "none is known" : "known are " + String.join(", ", known));
  }

  private static int distance(String one, String other) {
    String a = plain(one);
    String b = plain(other);
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        d[i][j] = i == 0 || j == 0 ? i + j : step(a, b, d, i, j);
      }
    }
    return d[a.length()][b.length()];
  }

  private static int step(String a, String b, int[][] d, int i, int j) {
    int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
    int least = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(least, d[i - 2][j - 2] + 1) : least;
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
  }
}
