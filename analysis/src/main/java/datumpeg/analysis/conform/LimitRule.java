package datumpeg.analysis.conform;

import java.util.List;
import java.util.OptionalDouble;

/** How a permitted deviation follows from the size of the thing it applies to. Metres. */
public sealed interface LimitRule {

  /** Least permitted deviation of a signed measure, in metres. */
  double lowerMetres(double sizeMetres);

  /** Greatest permitted deviation, in metres. */
  double upperMetres(double sizeMetres);

  /** The same limits whatever the size. */
  record Constant(double lower, double upper) implements LimitRule {
    /**
     * @throws IllegalArgumentException unless lower &lt;= 0 &lt;= upper and lower &lt; upper
     */
    public Constant {
      if (!(lower <= 0 && upper >= 0 && lower < upper)) {
        throw new IllegalArgumentException(
            "The limits run from "
                + lower
                + " m to "
                + upper
                + " m; expected the lower at or below 0 and the upper at or above it.");
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
              .filter(candidate -> sizeMetres <= candidate.upToMetres())
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
}
