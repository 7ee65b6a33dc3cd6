package datumpeg.analysis.remedy;

import datumpeg.analysis.conform.Decision;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.quantity.LengthDisplay;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Where to snap the lines of a building on a slab as it was poured: the place and the small
 * rotation of the designed rectangle that leave its worst edge least short of the plan; where that
 * leaves a choice, the least mean square.
 *
 * <p>An edge is short by what the line mark lies nearer to it than planned. Worked: a slab planned
 * 12 × 9 m but poured 11.990 × 9.006 m leaves both ends 5 mm short and both sides 3 mm to spare.
 *
 * <p>Whether it fits is decided as the greatest of as many values as there are edges. At the true
 * best place what is short is a weighted mean of the edges that hold the lines there (the dual of a
 * linear programme), and the best place on the adjusted slab leaves at least that much short but
 * for the error of this mean; it leaves at most as much more as the greatest error of an edge.
 *
 * @param offsets what to mark from the slab's edges, by line mark
 * @param shortMetres how much the worst edge is short of the plan; negative if all have to spare
 * @param standardUncertaintyMetres of that, from the adjusted corners
 * @param shortAt the line mark at that edge, such as B4
 * @param allowedMetres how much it may be short; empty if the job gives no limit
 * @param decided whether it is short by no more than that; empty if the job gives no limit
 */
public record LinePlacement(
    List<Offset> offsets,
    double shortMetres,
    double standardUncertaintyMetres,
    String shortAt,
    OptionalDouble allowedMetres,
    Optional<Decision.Decided> decided) {
  public LinePlacement {
    offsets = List.copyOf(offsets);
  }

  /**
   * A distance to mark.
   *
   * @param line the line mark, such as A1
   * @param edge the slab edge it is measured square from, such as A1-A4
   * @param plannedMetres as designed
   * @param metres as it is to be marked
   * @param standardUncertaintyMetres from the adjusted corners
   */
  public record Offset(
      String line,
      String edge,
      double plannedMetres,
      double metres,
      double standardUncertaintyMetres) {}

  /** Whether the worst edge is surely within what is allowed; true where nothing is said of it. */
  public boolean fits() {
    return is(Verdict.CONFORMING) || decided.isEmpty();
  }

  /** Whether it was decided so. */
  public boolean is(Verdict verdict) {
    return decided.filter(found -> found.verdict() == verdict).isPresent();
  }

  /** Can the lines be snapped, in a sentence. */
  public String sentence() {
    String amount = Millimetres.with(shortMetres, 2 * standardUncertaintyMetres);
    String allowed =
        allowedMetres.isPresent()
            ? " (" + Millimetres.of(allowedMetres.getAsDouble()) + " allowed)"
            : "";
    String worst = "at best short by " + amount + " at " + shortAt + allowed + ".";
    if (is(Verdict.NONCONFORMING)) {
      return "The lines do not fit on the slab: " + worst;
    }
    if (is(Verdict.UNDECIDED)) {
      return "Whether the lines fit on the slab is too close to call: " + worst;
    }
    if (Math.abs(shortMetres) <= 2 * standardUncertaintyMetres) {
      return "The lines fit on the slab as planned, as far as the meter can see ("
          + Millimetres.of(2 * standardUncertaintyMetres)
          + ").";
    }
    return shortMetres < 0
        ? "The lines fit on the slab with at least " + amount + " to spare at each edge."
        : "The lines fit on the slab: at best short of the plan by "
            + amount
            + " at "
            + shortAt
            + allowed
            + ".";
  }

  /** What to mark, such as "A1 214 from A1-A4 and 5 from A1-B1; …", in whole millimetres. */
  public String marks() {
    return offsets.stream()
        .map(Offset::line)
        .distinct()
        .map(line -> line + " " + marksAt(line))
        .collect(Collectors.joining("; "));
  }

  private String marksAt(String line) {
    return offsets.stream()
        .filter(offset -> offset.line().equals(line))
        .map(LinePlacement::mark)
        .collect(Collectors.joining(" and "));
  }

  private static String mark(Offset offset) {
    String millimetres = LengthDisplay.decimal(offset.metres() * 1000, 0);
    return millimetres.startsWith("-")
        ? millimetres.substring(1) + " beyond " + offset.edge()
        : millimetres + " from " + offset.edge();
  }
}
