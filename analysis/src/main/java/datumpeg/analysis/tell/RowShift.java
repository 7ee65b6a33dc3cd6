package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Shifting;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The shift of a row of frames that brings every bay of it inside its limits. */
final class RowShift {
  private final Situation situation;

  RowShift(Situation situation) {
    this.situation = situation;
  }

  /** What to shift for the worst bay of a row. */
  String words(Outcome worst, List<Outcome> all) {
    int slash = worst.target().indexOf('/');
    String feature = worst.target().substring(slash + 1);
    String side =
        worst.target().substring(0, 1).matches("[A-Z]") ? worst.target().substring(0, 1) : "";
    Map<String, Double> moves = moves(side, feature, all);
    boolean movable =
        feature.equals("base") ? situation.movability().bases() : situation.movability().tops();
    if (moves.isEmpty()) {
      return worst.remedy();
    }
    String words = Shifting.words(moves);
    return movable
        ? "Shift "
            + words
            + ", which brings every bay inside its limits (each is known to "
            + Millimetres.of(worst.expandedUncertainty())
            + "); then read the bays again."
        : "The "
            + feature
            + "s are fixed by now: ask the engineer before shifting "
            + words
            + ", which would bring every bay inside its limits.";
  }

  /**
   * The shift that brings every bay of a row inside its limits; empty if a bay was not measured.
   */
  private Map<String, Double> moves(String side, String feature, List<Outcome> all) {
    List<String> frames = new ArrayList<>(List.of(side + 1));
    List<Shifting.Bay> bays = new ArrayList<>();
    for (int number = 1; number < situation.setOut().building().portalFrameCount(); number++) {
      String target = side + number + "-" + side + (number + 1) + "/" + feature;
      all.stream()
          .filter(o -> o.check().equals("frame-spacing") && o.target().equals(target))
          .findFirst()
          .ifPresent(bay -> bays.add(inside(bay)));
      frames.add(side + (number + 1));
    }
    return bays.size() == frames.size() - 1
        ? Shifting.moves(frames, bays, overall(side, feature, all))
        : Map.of();
  }

  /** The overall length of a side with its limits, where it was measured at the base. */
  private static Optional<Shifting.Bay> overall(String side, String feature, List<Outcome> all) {
    return feature.equals("base")
        ? all.stream()
            .filter(o -> o.check().equals("overall-length") && o.target().equals(side))
            .filter(o -> o.limits().isPresent())
            .findFirst()
            .map(RowShift::inside)
        : Optional.empty();
  }

  private static Shifting.Bay inside(Outcome bay) {
    Limits limits = bay.limits().orElseThrow();
    double expanded = bay.expandedUncertainty();
    return new Shifting.Bay(
        bay.deviation(),
        limits.lower().orElse(Double.NEGATIVE_INFINITY) + expanded,
        limits.upper().orElse(Double.POSITIVE_INFINITY) - expanded);
  }
}
