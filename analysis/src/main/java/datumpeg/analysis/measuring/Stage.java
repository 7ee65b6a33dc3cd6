package datumpeg.analysis.measuring;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A moment in the work at which a set of targets is measured.
 *
 * @param id how the stage is written
 * @param title what it is, in a few words
 * @param checks the checks its measuring list serves
 * @param questions yes/no questions by their names
 * @param holdPoint whether work must not go past it before it is signed
 */
public record Stage(
    String id,
    String title,
    List<String> checks,
    Map<String, String> questions,
    boolean holdPoint) {

  /** The stages every job has, in the order of the work. */
  public static final List<Stage> STANDARD =
      List.of(
          of(
              "arrival",
              "slab check",
              List.of(
                  "slab-size",
                  "slab-diagonals",
                  "slab-square",
                  "slab-level",
                  "seat-level",
                  "slab-flatness")),
          of("set-out", "lines", List.of("line-parallel", "line-straight", "anchor-edge")),
          of(
              "assembly",
              "rafter pairs and wall frames on the slab",
              List.of("rafter-pair", "wall-square", "foot-line")),
          of(
              "standing",
              "walls up, before anchors are drilled",
              List.of("frame-spacing/base", "clear-span/base", "base-straight")),
          of(
              "lift",
              "anchored and propped, columns plumbed",
              List.of("column-plumb", "frame-spacing/base", "clear-span/base")),
          of(
              "tightening",
              "every portal before its bolts are tightened",
              List.of(
                  "column-plumb",
                  "frame-spacing/base",
                  "frame-spacing/eave",
                  "clear-span/eave",
                  "eave-level",
                  "mullion-plumb",
                  "mullion-spacing",
                  "opening")),
          of(
              "roofing",
              "before roof sheets",
              List.of(
                  "column-plumb", "frame-spacing/apex", "roof-square", "gutter-fall", "sheet-run")),
          of("handover", "as delivered", List.of("column-plumb", "frame-spacing/eave")));

  public Stage {
    checks = List.copyOf(checks);
    questions = Collections.unmodifiableMap(new LinkedHashMap<>(questions));
  }

  private static Stage of(String id, String title, List<String> checks) {
    return new Stage(id, title, checks, Map.of(), true);
  }

  public static Optional<Stage> standard(String id) {
    return STANDARD.stream().filter(stage -> stage.id.equals(id)).findFirst();
  }
}
