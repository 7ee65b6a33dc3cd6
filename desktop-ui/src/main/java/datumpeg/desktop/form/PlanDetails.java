package datumpeg.desktop.form;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.bridge.jobfile.JobDraft;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What else lies on the plan, as far as a draft gives it. Metres.
 *
 * @param corners the slab's own outline, in order; none for the rectangle
 * @param outlets of the gutters
 * @param runs the lines along which flatness is read
 * @param leastEdgeMetres least distance of an anchor from the slab's edge
 * @param anchorsAcrossMetres between the outermost anchors of a base
 */
record PlanDetails(
    List<Corner> corners,
    List<Post> posts,
    List<Outlet> outlets,
    List<Run> runs,
    Optional<Double> leastEdgeMetres,
    double anchorsAcrossMetres,
    double anchorsAlongMetres) {
  PlanDetails {
    corners = List.copyOf(corners);
    posts = List.copyOf(posts);
    outlets = List.copyOf(outlets);
    runs = List.copyOf(runs);
  }

  record Corner(String name, PlanPoint place) {}

  /** An end-wall post; at end 1, or at end n. */
  record Post(String name, boolean atFirstEnd, double fromSideAMetres) {}

  record Outlet(boolean onSideA, double fromFirstEndMetres) {}

  record Run(String name, PlanPoint from, PlanPoint to) {}

  static PlanDetails of(JobDraft draft) {
    List<Post> posts = new ArrayList<>(posts(draft, "end_1"));
    posts.addAll(posts(draft, "end_n"));
    return new PlanDetails(
        draft.keys("slab.corners").stream().flatMap(name -> corner(draft, name).stream()).toList(),
        posts,
        List.of("A", "B").stream().flatMap(side -> outlet(draft, side).stream()).toList(),
        draft.keys("flatness.lines").stream().flatMap(name -> run(draft, name).stream()).toList(),
        metres(draft, "anchors.edge_distance").stream()
            .filter(metres -> metres > 0)
            .boxed()
            .findFirst(),
        Math.max(0, metres(draft, "anchors.across").orElse(0)),
        Math.max(0, metres(draft, "anchors.along").orElse(0)));
  }

  private static Optional<Corner> corner(JobDraft draft, String name) {
    return point(draft, "slab.corners." + name).map(place -> new Corner(name, place));
  }

  private static List<Post> posts(JobDraft draft, String end) {
    List<Post> posts = new ArrayList<>();
    for (double place : TypedValue.allMetres(draft.text("mullions." + end))) {
      posts.add(new Post("M" + (posts.size() + 1), end.equals("end_1"), place));
    }
    return posts;
  }

  private static Optional<Outlet> outlet(JobDraft draft, String side) {
    OptionalDouble outlet = metres(draft, "gutters." + side + ".outlet");
    return outlet.isPresent() && outlet.getAsDouble() >= 0
        ? Optional.of(new Outlet(side.equals("A"), outlet.getAsDouble()))
        : Optional.empty();
  }

  private static Optional<Run> run(JobDraft draft, String name) {
    String path = "flatness.lines." + name;
    Optional<PlanPoint> from = point(draft, path + "[1]");
    Optional<PlanPoint> to = point(draft, path + "[2]");
    return from.isPresent() && to.isPresent()
        ? Optional.of(new Run(name, from.get(), to.get()))
        : Optional.empty();
  }

  private static Optional<PlanPoint> point(JobDraft draft, String path) {
    OptionalDouble along = metres(draft, path + "[1]");
    OptionalDouble across = metres(draft, path + "[2]");
    return along.isPresent() && across.isPresent()
        ? Optional.of(new PlanPoint(along.getAsDouble(), across.getAsDouble()))
        : Optional.empty();
  }

  private static OptionalDouble metres(JobDraft draft, String path) {
    return TypedValue.metres(draft.text(path));
  }
}
