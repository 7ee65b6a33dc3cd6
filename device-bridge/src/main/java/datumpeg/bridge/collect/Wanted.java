package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.jobs.StoredJob;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What the session asks for next.
 *
 * @param face 1 or 2 of a tilt meter, 0 for everything else
 * @param expectedSi what the plan says it reads, in metres or radians; empty where it says nothing
 */
public record Wanted(Target target, int face, OptionalDouble expectedSi) {

  /**
   * The list in its order. A tilt is wanted on two faces at the first, the middle and the last tilt
   * target: between them they show the meter's zero error, which all readings of the session share.
   * The others are wanted on face 1; what stays undecided is asked for on face 2 afterwards.
   */
  public static List<Wanted> of(MeasuringList list) {
    List<Target> tilts =
        list.targets().stream()
            .filter(target -> target.quantity() == MeasuredQuantity.TILT)
            .toList();
    Set<Target> twoFaced = new HashSet<>();
    if (!tilts.isEmpty()) {
      twoFaced.add(tilts.get(0));
      twoFaced.add(tilts.get(tilts.size() / 2));
      twoFaced.add(tilts.get(tilts.size() - 1));
    }
    List<Wanted> wanted = new ArrayList<>();
    for (MeasuringList.Item item : list.items()) {
      Target target = item.target();
      if (target.quantity() == MeasuredQuantity.ATTRIBUTE) {
        continue;
      }
      boolean tilt = target.quantity() == MeasuredQuantity.TILT;
      wanted.add(new Wanted(target, tilt ? 1 : 0, item.expectedSi()));
      if (twoFaced.contains(target)) {
        wanted.add(new Wanted(target, 2, item.expectedSi()));
      }
    }
    return List.copyOf(wanted);
  }

  /** The list for a replay without a person: every tilt on two faces, as before a guide led. */
  static List<Wanted> onAllFaces(MeasuringList list) {
    List<Wanted> wanted = new ArrayList<>();
    for (MeasuringList.Item item : list.items()) {
      if (item.target().quantity() == MeasuredQuantity.TILT) {
        wanted.add(new Wanted(item.target(), 1, item.expectedSi()));
        wanted.add(new Wanted(item.target(), 2, item.expectedSi()));
      } else if (item.target().quantity() != MeasuredQuantity.ATTRIBUTE) {
        wanted.add(new Wanted(item.target(), 0, item.expectedSi()));
      }
    }
    return List.copyOf(wanted);
  }

  /** Those of a list that no reading answers yet, in the round given or else in their newest. */
  public static List<Wanted> open(
      List<Wanted> list, StoredJob job, String stage, OptionalInt round) {
    return list.stream()
        .filter(
            wanted ->
                job.readings().stream()
                    .noneMatch(reading -> wanted.isAnsweredBy(reading, job, stage, round)))
        .toList();
  }

  private boolean isAnsweredBy(Reading reading, StoredJob job, String stage, OptionalInt round) {
    return reading.stage().equals(stage)
        && reading.target().equals(target)
        && (face == 0 || Math.max(1, reading.face()) == face)
        && reading.round() >= Math.max(round.orElse(1), MovedThing.roundOf(target, job.moved()));
  }
}
