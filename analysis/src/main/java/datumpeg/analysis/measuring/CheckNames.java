package datumpeg.analysis.measuring;

import java.util.ArrayList;
import java.util.List;

/** How the checks are written in job files and results. */
public final class CheckNames {
  /** Every check, in the order in which results tell them. */
  public static final List<String> ALL =
      List.of(
          "slab-size",
          "slab-diagonals",
          "slab-square",
          "slab-level",
          "slab-level-point",
          "seat-level",
          "slab-flatness",
          "line-parallel",
          "line-straight",
          "rafter-pair",
          "wall-square",
          "foot-line",
          "column-plumb",
          "portal-plumb",
          "frame-spacing",
          "spacing-match",
          "clear-span",
          "overall-length",
          "base-straight",
          "straightness",
          "mullion-plumb",
          "mullion-spacing",
          "anchor-edge",
          "opening",
          "eave-level",
          "roof-square",
          "gutter-fall",
          "sheet-run");

  private static final List<String> PLACED =
      List.of(
          "frame-spacing/base",
          "frame-spacing/eave",
          "frame-spacing/apex",
          "clear-span/base",
          "clear-span/eave");

  private CheckNames() {}

  /** What a stage may ask for: every check, and where frames are measured at several places. */
  public static List<String> ofStages() {
    List<String> names = new ArrayList<>(ALL);
    names.addAll(PLACED);
    return List.copyOf(names);
  }
}
