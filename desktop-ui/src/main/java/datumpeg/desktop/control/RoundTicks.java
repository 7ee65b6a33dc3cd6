package datumpeg.desktop.control;

import java.util.ArrayList;
import java.util.List;

/** Round numbers for an axis: multiples of 1, 2 or 5 times a power of ten. */
public final class RoundTicks {
  private RoundTicks() {}

  /**
   * The round numbers from the lowest to the highest value, both included where they are round.
   *
   * @param atMost how many are wanted at most, at least 2
   * @throws IllegalArgumentException unless lowest &lt; highest, both finite
   */
  public static List<Double> between(double lowest, double highest, int atMost) {
    if (!(lowest < highest) || !Double.isFinite(highest - lowest) || atMost < 2) {
      throw new IllegalArgumentException(
          "An axis from " + lowest + " to " + highest + " with " + atMost + " numbers is none.");
    }
    double step = step((highest - lowest) / (atMost - 1));
    List<Double> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(lowest / step - 1e-9); i * step <= highest + step * 1e-9; i++) {
      ticks.add(Math.rint(i * step * 1e9) / 1e9);
    }
    return ticks;
  }

  /**
   * The least whole number of the same kind that is not below another: 1, 2, 5, 10, 20 and so on.
   */
  public static int wholeStep(double least) {
    return least <= 1 ? 1 : (int) Math.round(step(least));
  }

  private static double step(double least) {
    double decade = Math.pow(10, Math.floor(Math.log10(least)));
    for (double factor : new double[] {1, 2, 5}) {
      if (factor * decade >= least * (1 - 1e-9)) {
        return factor * decade;
      }
    }
    return 10 * decade;
  }
}
