package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.UnknownPointException;
import datumpeg.analysis.check.AdjustedReading;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.reduce.StageFindings;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Where the readings lie that a slip is suspected in. */
final class SlipPlaces {
  private SlipPlaces() {}

  static boolean isAny(StageFindings findings) {
    return findings.notes().stream().anyMatch(note -> note.kind() == Note.Kind.SLIP_SUSPECTED);
  }

  /** The ends of each suspected reading in the plan; one place for a reading at one point. */
  static List<List<PlanPoint>> of(SetOut setOut, StageFindings findings) {
    Set<String> suspected =
        findings.notes().stream()
            .filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED)
            .flatMap(note -> note.readingIds().stream())
            .collect(Collectors.toSet());
    Set<String> targets = new LinkedHashSet<>();
    findings.networks().stream()
        .flatMap(network -> network.readings().stream())
        .filter(reading -> suspected.contains(reading.readingId()))
        .map(AdjustedReading::target)
        .forEach(targets::add);
    return targets.stream()
        .map(target -> places(setOut, target))
        .filter(places -> !places.isEmpty())
        .toList();
  }

  private static List<PlanPoint> places(SetOut setOut, String target) {
    List<PlanPoint> places = new ArrayList<>();
    try {
      for (String name : target.split("-(?=[a-z]+\\.)", -1)) {
        PointName.parse(name.replaceAll("/(along|across)$", ""))
            .ifPresent(point -> places.add(setOut.position(point).plan()));
      }
    } catch (UnknownPointException unknown) {
      return List.of(); // not in this revision of the plan
    }
    return places;
  }
}
