package datumpeg.analysis.report.writing;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import java.util.Map;
import java.util.Optional;

/** Checks, targets and verdicts in the words of the trade. */
public final class CheckWords {
  private static final Map<String, String> CHECKS =
      Map.ofEntries(
          Map.entry("slab-size", "Slab side"),
          Map.entry("slab-diagonals", "Slab diagonals"),
          Map.entry("slab-square", "Slab squareness"),
          Map.entry("slab-level", "Slab level"),
          Map.entry("slab-level-point", "Level against the mean"),
          Map.entry("slab-flatness", "Slab flatness"),
          Map.entry("seat-level", "Level under the bases"),
          Map.entry("line-parallel", "Column lines parallel"),
          Map.entry("line-straight", "Column line straight"),
          Map.entry("rafter-pair", "Tip distance of the rafter pair"),
          Map.entry("wall-square", "Rack of the wall frame"),
          Map.entry("foot-line", "Foot on the line"),
          Map.entry("column-plumb", "Column plumb"),
          Map.entry("portal-plumb", "Portal frame plumb"),
          Map.entry("frame-spacing", "Frame spacing"),
          Map.entry("spacing-match", "Spacing at the eave less at the base"),
          Map.entry("clear-span", "Clear span"),
          Map.entry("overall-length", "Overall length"),
          Map.entry("base-straight", "Bases in line"),
          Map.entry("mullion-plumb", "Mullion plumb"),
          Map.entry("mullion-spacing", "Mullion spacing"),
          Map.entry("anchor-edge", "Anchor to the slab's edge"),
          Map.entry("opening", "Opening"),
          Map.entry("eave-level", "Eave level"),
          Map.entry("roof-square", "Roof square"),
          Map.entry("gutter-fall", "Gutter fall"),
          Map.entry("sheet-run", "Run of the sheets"));

  private CheckWords() {}

  /** What is checked; a check without words of its own is told by its name. */
  public static String check(String check) {
    return CHECKS.getOrDefault(check, check.replace('-', ' '));
  }

  /** What it was checked of: "corner A1", "column A3, across", "A1 to A2 at the base". */
  public static String target(String check, String target) {
    return switch (check) {
      case "slab-size" -> range(target);
      case "slab-square" -> "corner " + target;
      case "slab-diagonals" -> "difference of the two";
      case "slab-level", "seat-level" -> "highest less lowest";
      case "slab-flatness" ->
          target.equals("straightedge") ? "greatest gap under the straightedge" : target;
      case "column-plumb" -> direction(target);
      case "portal-plumb" -> "frame " + direction(target) + ", mean of its columns";
      case "rafter-pair" -> "frame " + target;
      case "wall-square", "overall-length" -> "wall " + target;
      case "clear-span" -> "frame " + level(target);
      default -> level(range(target));
    };
  }

  /** Check and target in one phrase. */
  public static String phrase(Outcome outcome) {
    return check(outcome.check()) + ", " + target(outcome.check(), outcome.target());
  }

  /** A verdict as a word; without limits there is none. */
  public static String verdict(Optional<Verdict> verdict) {
    return verdict.map(Verdict::text).orElse("no limit given");
  }

  private static String range(String target) {
    return target.replaceFirst("^([A-Z]?\\d+)-([A-Z]?\\d+)", "$1 to $2");
  }

  private static String direction(String target) {
    return target.replace("/", ", ");
  }

  private static String level(String target) {
    return target.replaceFirst("/(base|eave|apex)$", " at the $1");
  }
}
