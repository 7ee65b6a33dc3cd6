package datumpeg.desktop.form;

import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.Wall;
import datumpeg.bridge.jobfile.JobDraft;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * The building as far as a draft gives it, to be drawn while it is typed: what is missing or makes
 * no sense yet is left out, or taken as nothing. Metres.
 *
 * @param insetMetres from the slab's side edge in to the outer face of the columns
 * @param gable whether the roof rises to a ridge
 * @param details what else lies on the plan
 */
record BuildingShape(
    OptionalDouble spanMetres,
    OptionalDouble lengthMetres,
    List<Double> baysMetres,
    double endLineOffsetMetres,
    OptionalDouble eaveHeightMetres,
    boolean gable,
    OptionalDouble pitchRadians,
    double insetMetres,
    double columnDepthMetres,
    double columnWidthMetres,
    double rafterDepthMetres,
    List<Hole> holes,
    PlanDetails details) {
  private static final double STEEPEST_RADIANS = StrictMath.toRadians(89);

  BuildingShape {
    baysMetres = List.copyOf(baysMetres);
    holes = List.copyOf(holes);
  }

  /** An opening; its sill is the slab. */
  record Hole(
      String id, Wall wall, double fromMetres, double widthMetres, OptionalDouble heightMetres) {}

  static BuildingShape of(JobDraft draft) {
    boolean between = draft.text("sections.girts").equals("between");
    double girt = between ? 0 : orNothing(draft, "sections.side_girt_depth");
    return new BuildingShape(
        metres(draft, "building.span"),
        metres(draft, "building.length"),
        DoubleStream.of(TypedValue.allMetres(draft.text("building.bays")))
            .filter(bay -> bay > 0)
            .boxed()
            .toList(),
        orNothing(draft, "building.end_line_offset"),
        metres(draft, "building.eave_height"),
        draft.text("building.roof").equals("gable"),
        pitch(draft),
        orNothing(draft, "sections.edge_to_girt_face") + girt,
        orNothing(draft, "sections.column_depth"),
        orNothing(draft, "sections.column_width"),
        orNothing(draft, "sections.rafter_depth"),
        holes(draft),
        PlanDetails.of(draft));
  }

  /** From the slab's side edge in to the column line. */
  double columnLineMetres() {
    return insetMetres + columnDepthMetres;
  }

  /**
   * Centre lines of the frames from the slab's end edge 1; none before length and bays are known.
   */
  List<Double> framesMetres() {
    List<Double> frames = new ArrayList<>();
    if (baysMetres.isEmpty() || lengthMetres.isEmpty()) {
      return frames;
    }
    double at = endLineOffsetMetres;
    frames.add(at + columnWidthMetres / 2);
    for (double bay : baysMetres.subList(0, baysMetres.size() - 1)) {
      at += bay;
      frames.add(at);
    }
    frames.add(at + baysMetres.get(baysMetres.size() - 1) - columnWidthMetres / 2);
    return frames;
  }

  /** Height of the underside of the rafters at their meeting, under a gable. */
  OptionalDouble ridgeHeightMetres() {
    if (!gable || spanMetres.isEmpty() || eaveHeightMetres.isEmpty() || pitchRadians.isEmpty()) {
      return OptionalDouble.empty();
    }
    double half = spanMetres.getAsDouble() / 2 - columnLineMetres();
    return OptionalDouble.of(
        eaveHeightMetres.getAsDouble()
            + Math.max(0, half) * StrictMath.tan(pitchRadians.getAsDouble()));
  }

  private static OptionalDouble pitch(JobDraft draft) {
    OptionalDouble pitch = TypedValue.radians(draft.text("building.pitch"));
    boolean drawable = pitch.orElse(-1) >= 0 && pitch.orElse(-1) < STEEPEST_RADIANS;
    return drawable ? pitch : OptionalDouble.empty();
  }

  private static List<Hole> holes(JobDraft draft) {
    List<Hole> holes = new ArrayList<>();
    for (String id : draft.keys("openings")) {
      String table = "openings." + id;
      Optional<Wall> wall = Wall.ofText(draft.text(table + ".wall"));
      OptionalDouble width = width(draft, table);
      OptionalDouble from = TypedValue.metres(draft.text(table + ".from"));
      if (wall.isPresent() && width.isPresent() && from.isPresent()) {
        holes.add(
            new Hole(
                id,
                wall.get(),
                from.getAsDouble(),
                width.getAsDouble(),
                metres(draft, table + ".height")));
      }
    }
    return holes;
  }

  private static OptionalDouble width(JobDraft draft, String table) {
    OptionalDouble given = metres(draft, table + ".opening_width");
    OptionalDouble curtain = metres(draft, table + ".curtain_width");
    if (given.isPresent() || curtain.isEmpty()) {
      return given;
    }
    double width =
        Opening.widthForCurtainMetres(
            curtain.getAsDouble(), orNothing(draft, table + ".track_width"));
    return width > 0 ? OptionalDouble.of(width) : OptionalDouble.empty();
  }

  private static OptionalDouble metres(JobDraft draft, String path) {
    OptionalDouble metres = TypedValue.metres(draft.text(path));
    return metres.isPresent() && metres.getAsDouble() > 0 ? metres : OptionalDouble.empty();
  }

  private static double orNothing(JobDraft draft, String path) {
    return metres(draft, path).orElse(0);
  }
}
