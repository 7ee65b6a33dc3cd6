package datumpeg.analysis.conform;

import java.util.List;
import java.util.OptionalDouble;

/** How a permitted deviation follows from the size of the thing it applies to. Metres. */
public sealed interface LimitRule {
  /** A size beyond the end of a range by no more than this is that end in another unit or sum. */
  double SAME_SIZE_METRES = 1e-9;

  /** Least permitted deviation of a signed measure, in metres. */
  double lowerMetres(double sizeMetres);

  /** Greatest permitted deviation, in metres. */
  double upperMetres(double sizeMetres);

  /** The same limits whatever the size; one of them may be infinite, which is no limit that way. */
  record Constant(double lower, double upper) implements LimitRule {
    /**
     * @throws IllegalArgumentException unless lower &lt;= 0 &lt;= upper and lower &lt; upper
     */
    public Constant {
      if (!(lower <= 0 && upper >= 0 && lower < upper)
          || (Double.isInfinite(lower) && Double.isInfinite(upper))) {
        throw new IllegalArgumentException(
            "The limits run from "
                + lower
                + " m to "
                + upper
                + " m; expected the lower at or below 0, the upper at or above it, and one of them"
                + " finite.");
      }
    }

    @Override
    public double lowerMetres(double sizeMetres) {
      return lower;
    }

    @Override
    public double upperMetres(double sizeMetres) {
      return upper;
    }
  }

  /** ± size / ratio, at most the cap. */
  record Ratio(double ratio, OptionalDouble capMetres) implements LimitRule {
    /**
     * @throws IllegalArgumentException if ratio or cap is not positive
     */
    public Ratio {
      if (!(ratio > 0) || !(capMetres.orElse(1) > 0)) {
        throw new IllegalArgumentException(
            "The limit is a ratio of "
                + ratio
                + " with a cap of "
                + capMetres
                + "; expected both to be more than 0.");
      }
    }

    @Override
    public double lowerMetres(double sizeMetres) {
      return -upperMetres(sizeMetres);
    }

    @Override
    public double upperMetres(double sizeMetres) {
      return Math.min(sizeMetres / ratio, capMetres.orElse(Double.POSITIVE_INFINITY));
    }
  }

  /**
   * ± a + b·size, with other a and b for each range of sizes; the last piece has no end.
   *
   * @param pieces in ascending order of their ends
   */
  record Pieces(List<Piece> pieces) implements LimitRule {
    /**
     * @throws IllegalArgumentException for no pieces, or ends that do not ascend
     */
    public Pieces {
      pieces = List.copyOf(pieces);
      if (pieces.isEmpty()) {
        throw new IllegalArgumentException("A limit in pieces needs at least one piece.");
      }
      for (int i = 1; i < pieces.size(); i++) {
        if (!(pieces.get(i).upToMetres() > pieces.get(i - 1).upToMetres())) {
          throw new IllegalArgumentException("The pieces of a limit must end at ascending sizes.");
        }
      }
    }

    @Override
    public double lowerMetres(double sizeMetres) {
      return -upperMetres(sizeMetres);
    }

    @Override
    public double upperMetres(double sizeMetres) {
      Piece piece =
          pieces.stream()
              .filter(candidate -> sizeMetres <= candidate.upToMetres() + SAME_SIZE_METRES)
              .findFirst()
              .orElse(pieces.get(pieces.size() - 1));
      return piece.constantMetres() + piece.perMetre() * sizeMetres;
    }
  }

  /**
   * One range of sizes, up to and including its end.
   *
   * @param upToMetres its end; infinite for the last
   */
  record Piece(double upToMetres, double constantMetres, double perMetre) {}

  /**
   * ± a limit by ranges of sizes, or by points between which it is interpolated.
   *
   * <p>Documents differ, so a row says which: without interpolation a limit holds up to and
   * including its size; with it, limits between two sizes lie on the straight line between theirs.
   * Below the first size and above the last the first and the last limit hold.
   *
   * @param steps in ascending order of their sizes; the last may have no end
   * @param roundedToMetres an interpolated limit is rounded to a multiple of this, half up; 0 =
   *     left as it is
   */
  record Steps(List<Step> steps, Interpolation interpolation, double roundedToMetres)
      implements LimitRule {
    /**
     * @throws IllegalArgumentException for no steps, sizes that do not ascend, a limit that is not
     *     positive, or an endless step to interpolate to
     */
    public Steps {
      steps = List.copyOf(steps);
      if (steps.isEmpty()) {
        throw new IllegalArgumentException("A limit in steps needs at least one step.");
      }
      for (int i = 0; i < steps.size(); i++) {
        if (i > 0 && !(steps.get(i).sizeMetres() > steps.get(i - 1).sizeMetres())) {
          throw new IllegalArgumentException("The steps of a limit must end at ascending sizes.");
        }
        if (!(steps.get(i).limitMetres() > 0)) {
          throw new IllegalArgumentException("The limit of a step must be more than 0.");
        }
      }
      if (interpolation == Interpolation.LINEAR
          && Double.isInfinite(steps.get(steps.size() - 1).sizeMetres())) {
        throw new IllegalArgumentException(
            "A limit that is interpolated needs a size for each step, also for the last.");
      }
      if (!(roundedToMetres >= 0) || !Double.isFinite(roundedToMetres)) {
        throw new IllegalArgumentException("A limit is rounded to a length of 0 or more.");
      }
    }

    @Override
    public double lowerMetres(double sizeMetres) {
      return -upperMetres(sizeMetres);
    }

    @Override
    public double upperMetres(double sizeMetres) {
      Step before = steps.get(0);
      for (Step step : steps) {
        if (sizeMetres <= step.sizeMetres() + SAME_SIZE_METRES) {
          return interpolation == Interpolation.NONE || step.equals(before)
              ? step.limitMetres()
              : rounded(between(before, step, sizeMetres));
        }
        before = step;
      }
      return before.limitMetres();
    }

    private static double between(Step before, Step after, double sizeMetres) {
      double share =
          (sizeMetres - before.sizeMetres()) / (after.sizeMetres() - before.sizeMetres());
      return before.limitMetres() + share * (after.limitMetres() - before.limitMetres());
    }

    private double rounded(double metres) {
      return roundedToMetres == 0
          ? metres
          : Math.floor(metres / roundedToMetres + 0.5 + 1e-9) * roundedToMetres;
    }
  }

  /**
   * One size and its limit.
   *
   * @param sizeMetres the size it holds up to, or at; infinite for a last one without an end
   */
  record Step(double sizeMetres, double limitMetres) {}

  /** What holds between two steps. */
  enum Interpolation {
    NONE,
    LINEAR
  }

  /**
   * ± what a formula in the size gives.
   *
   * @param text in millimetres, with L for the size in metres, such as {@code max(4, 1.5*sqrt(L))}
   */
  record Formula(String text) implements LimitRule {
    private static final double LEAST_SIZE = 0.1;
    private static final double MOST_SIZE = 1000;

    /**
     * @throws IllegalArgumentException for a text that is no formula, or one that does not give a
     *     positive limit for each size from 0.1 m to 1000 m
     */
    public Formula {
      for (double size = LEAST_SIZE; size <= MOST_SIZE; size *= 1.1) {
        double limit = FormulaText.value(text, size);
        if (!(limit > 0) || !Double.isFinite(limit)) {
          throw new IllegalArgumentException(
              "The formula \""
                  + text
                  + "\" gives "
                  + limit
                  + " mm for L = "
                  + Math.round(size * 10) / 10.0
                  + " m; expected more than 0 for any size from 0.1 m to 1000 m.");
        }
      }
    }

    @Override
    public double lowerMetres(double sizeMetres) {
      return -upperMetres(sizeMetres);
    }

    @Override
    public double upperMetres(double sizeMetres) {
      double size = Math.max(LEAST_SIZE, Math.min(MOST_SIZE, sizeMetres));
      return Math.max(0, FormulaText.value(text, size)) / 1000;
    }
  }
}
