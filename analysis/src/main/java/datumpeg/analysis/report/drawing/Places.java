package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.UnknownPointException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the place in the plan that a check's target is about, as a reader would point at it. */
final class Places {
  private static final Pattern MARK = Pattern.compile("([A-Z]\\d+)(?:/.*)?");
  private static final Pattern MARKS = Pattern.compile("([A-Z]\\d+)-([A-Z]\\d+)(?:/.*)?");
  private static final Pattern FRAME = Pattern.compile("(\\d+)(?:/.*)?");
  private static final Pattern FRAMES = Pattern.compile("(\\d+)-(\\d+)(?:/.*)?");
  private static final Pattern WALL = Pattern.compile("[AB]");

  private final SetOut setOut;

  Places(SetOut setOut) {
    this.setOut = setOut;
  }

  /** Where to point; empty if the target is nowhere in particular or not in the plan. */
  Optional<PlanPoint> of(String check, String target) {
    try {
      return Optional.of(find(check, target));
    } catch (UnknownPointException unknown) {
      return Optional.empty();
    }
  }

  private PlanPoint find(String check, String target) {
    String feature = check.startsWith("slab-") ? "slab" : "base";
    Optional<PointName> point = PointName.parse(target);
    if (point.isPresent()) {
      return setOut.position(point.get()).plan();
    }
    Matcher match = MARK.matcher(target);
    if (match.matches()) {
      return at(feature, match.group(1));
    }
    match = MARKS.matcher(target);
    if (match.matches()) {
      return between(at(feature, match.group(1)), at(feature, match.group(2)));
    }
    match = FRAME.matcher(target);
    if (match.matches()) {
      return frame(match.group(1));
    }
    match = FRAMES.matcher(target);
    if (match.matches()) {
      return between(frame(match.group(1)), frame(match.group(2)));
    }
    return WALL.matcher(target).matches() ? wall(target) : middle();
  }

  private PlanPoint at(String feature, String mark) {
    return setOut.position(new PointName(feature, mark, "")).plan();
  }

  private PlanPoint frame(String number) {
    return between(at("base", "A" + number), at("base", "B" + number));
  }

  private PlanPoint wall(String letter) {
    int last = setOut.building().portalFrameCount();
    return between(at("base", letter + "1"), at("base", letter + last));
  }

  private PlanPoint middle() {
    List<PlanPoint> corners = List.copyOf(setOut.slab().corners().values());
    double x = corners.stream().mapToDouble(PlanPoint::xMetres).average().orElse(0);
    double y = corners.stream().mapToDouble(PlanPoint::yMetres).average().orElse(0);
    return new PlanPoint(x, y);
  }

  private static PlanPoint between(PlanPoint one, PlanPoint other) {
    return new PlanPoint(
        (one.xMetres() + other.xMetres()) / 2, (one.yMetres() + other.yMetres()) / 2);
  }
}
