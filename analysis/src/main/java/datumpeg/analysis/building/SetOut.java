package datumpeg.analysis.building;

import datumpeg.analysis.detail.Details;
import datumpeg.analysis.detail.Mullion;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The dimensions that follow from the plan, and where each of its points stands.
 *
 * <p>Frames: with column width w, x₁ = end line offset + w/2, xₖ = end line offset + bays 1 … k−1,
 * xₙ = length − end line offset − w/2. Across: the column line is edge-to-girt-face + side girt
 * depth + column depth in from the side edge.
 */
public final class SetOut {
  private final Building building;
  private final Slab slab;
  private final List<Opening> openings;
  private final Details details;
  private final double[] framesXMetres;

  /** A plan without further details. */
  public SetOut(Building building, Slab slab, List<Opening> openings) {
    this(building, slab, openings, Details.NONE);
  }

  public SetOut(Building building, Slab slab, List<Opening> openings, Details details) {
    this.building = building;
    this.slab = slab;
    this.openings = List.copyOf(openings);
    this.details = details;
    this.framesXMetres = framesXMetres(building);
  }

  private static double[] framesXMetres(Building building) {
    double[] places = new double[building.portalFrameCount()];
    double half = building.sections().columnWidthMetres() / 2;
    double passed = 0;
    for (int k = 0; k < places.length; k++) {
      places[k] = building.endLineOffsetMetres() + passed;
      passed += k < building.baysMetres().size() ? building.baysMetres().get(k) : 0;
    }
    places[0] = building.endLineOffsetMetres() + half;
    places[places.length - 1] = building.lengthMetres() - building.endLineOffsetMetres() - half;
    return places;
  }

  public Building building() {
    return building;
  }

  public Slab slab() {
    return slab;
  }

  public List<Opening> openings() {
    return openings;
  }

  public Details details() {
    return details;
  }

  /**
   * Where a frame's centre line stands along the building, in metres from the slab's end edge 1.
   */
  public double portalFrameXMetres(int number) {
    requireFrame(number, framesXMetres.length);
    return framesXMetres[number - 1];
  }

  /** As {@link #portalFrameXMetres(int)}, for a face of the frame's columns or rafters. */
  public double portalFrameXMetres(int number, Face face) {
    double half = building.sections().columnWidthMetres() / 2;
    double centre = portalFrameXMetres(number);
    return switch (face) {
      case LOW -> centre - half;
      case MID -> centre;
      case HIGH -> centre + half;
    };
  }

  /** From the slab's side edge in to the column line. */
  public double columnLineOffsetMetres() {
    return building.sections().columnLineOffsetMetres();
  }

  /** Between the two column lines. */
  public double clearSpanMetres() {
    return building.spanMetres() - 2 * columnLineOffsetMetres();
  }

  /** Between the outer faces of the end columns of one wall. */
  public double overallLengthMetres() {
    return building.lengthMetres() - 2 * building.endLineOffsetMetres();
  }

  /** Between the line marks of opposite corners, such as line.A1 and line.B4. */
  public double lineDiagonalMetres() {
    return new PlanPoint(0, 0)
        .distanceMetres(new PlanPoint(overallLengthMetres(), clearSpanMetres()));
  }

  /**
   * Between the outermost points of a rafter pair at its feet: as the drawing gives it, else clear
   * span − 2 · knee gap. Rafters lying over the columns have no nominal unless the drawing gives
   * it.
   */
  public OptionalDouble tipDistanceMetres() {
    if (building.roof() != Roof.GABLE) {
      return OptionalDouble.empty();
    }
    OptionalDouble drawn = building.sections().tipDistanceMetres();
    return drawn.isPresent()
        ? drawn
        : OptionalDouble.of(clearSpanMetres() - 2 * building.sections().kneeGapMetres());
  }

  /**
   * How much shorter than the tip distance the distance between the bottom corners is: 2·d·sin θ
   * for rafters of depth d cut square at pitch θ, 0 for plumb cuts.
   */
  public double bottomCornerShortfallMetres() {
    Sections sections = building.sections();
    return sections.rafterEnd() == RafterEnd.SQUARE
        ? 2 * sections.rafterDepthMetres() * StrictMath.sin(building.pitchRadians())
        : 0;
  }

  /**
   * The pitch of a pair of rafters of the drawing's length whose tips stand at the tip distance:
   * cos θ = tip distance / (2 · rafter length). Empty without either, or if the rafters are too
   * short.
   */
  public OptionalDouble pitchFromRafterLengthRadians() {
    OptionalDouble tips = tipDistanceMetres();
    OptionalDouble rafter = building.sections().rafterLengthMetres();
    if (tips.isEmpty() || rafter.isEmpty()) {
      return OptionalDouble.empty();
    }
    double cosine = tips.getAsDouble() / (2 * rafter.getAsDouble());
    return cosine < 1 ? OptionalDouble.of(StrictMath.acos(cosine)) : OptionalDouble.empty();
  }

  /**
   * How far the apex moves up for each unit of more tip distance, at fixed rafter length: −½·cot θ
   * (h² = L² − (t/2)², so dh/dt = −t/(4h)).
   */
  public static double apexMovePerTipDistance(double pitchRadians) {
    return -0.5 / StrictMath.tan(pitchRadians);
  }

  /**
   * Height of the underside of the roof frames above the slab at a place across the building: the
   * eave height at the column lines and, under a gable, rising by the pitch from there. A mono roof
   * is taken as level at the eave height, because the plan does not say which side is the high one.
   */
  public double roofHeightMetres(double yMetres) {
    double fromColumnLine =
        Math.min(yMetres, building.spanMetres() - yMetres) - columnLineOffsetMetres();
    return building.roof() == Roof.GABLE
        ? building.eaveHeightMetres()
            + Math.max(0, fromColumnLine) * StrictMath.tan(building.pitchRadians())
        : building.eaveHeightMetres();
  }

  /** Height of an end-wall post: as drawn, else up to the rafter. */
  public double mullionHeightMetres(Mullion mullion) {
    return mullion.heightMetres().orElseGet(() -> roofHeightMetres(mullion.fromSideAMetres()));
  }

  /**
   * Height of a post of an end or an opening, such as mullion.1.M1 or opening.D1/left.
   *
   * @throws UnknownPointException if the plan has no such post
   */
  public double postHeightMetres(PointName post) {
    if (post.feature().equals("mullion")) {
      return mullionHeightMetres(mullion(post));
    }
    return openings.stream()
        .filter(opening -> post.feature().equals("opening") && opening.id().equals(post.place()))
        .mapToDouble(Opening::heightMetres)
        .findFirst()
        .orElseThrow(() -> new UnknownPointException("The plan has no post " + post.text() + "."));
  }

  /**
   * The end-wall post of a point such as mullion.1.M1.
   *
   * @throws UnknownPointException if the plan has no such post
   */
  public Mullion mullion(PointName point) {
    return new DetailPositions(this).mullion(point);
  }

  /**
   * Where a point stands in the plan.
   *
   * @throws UnknownPointException if the plan has no such point
   */
  public Position position(PointName point) {
    return new Positions(this).of(point);
  }

  /**
   * The design distance between two points: straight, except between the tips of one rafter pair.
   *
   * @throws UnknownPointException if the plan has no such point, or gives no tip distance
   */
  public double nominalDistanceMetres(PointName first, PointName second) {
    if (first.feature().equals("tip") && second.feature().equals("tip")) {
      position(first);
      position(second);
      double firstIn = first.part().equals("bottom") ? bottomCornerShortfallMetres() / 2 : 0;
      double secondIn = second.part().equals("bottom") ? bottomCornerShortfallMetres() / 2 : 0;
      return tipDistanceMetres()
              .orElseThrow(() -> new UnknownPointException("The plan gives no tip distance."))
          - firstIn
          - secondIn;
    }
    return position(first).distanceMetres(position(second));
  }

  /** The frame numbers 1 … n. */
  public List<Integer> portalFrameNumbers() {
    return IntStream.rangeClosed(1, building.portalFrameCount()).boxed().toList();
  }

  private static void requireFrame(int number, int n) {
    if (number < 1 || number > n) {
      throw new UnknownPointException(
          "There is no frame " + number + "; the plan has frames 1 to " + n + ".");
    }
  }
}
