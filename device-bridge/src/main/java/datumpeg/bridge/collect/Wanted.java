package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.bridge.jobs.StoredJob;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What the session asks for next.
 *
 * @param target of a measurement, or a question of the stage to be answered with yes or no
 * @param face 1 or 2 of a tilt meter, 0 for everything else
 * @param expectedSi what the plan says it reads, in metres or radians; empty where it says nothing
 */
public record Wanted(Target target, int face, OptionalDouble expectedSi) {

  /**
   * The list in its order. A tilt is wanted on two faces at the first, the middle and the last tilt
   * target: between them they show the meter's zero error, which all readings of the session share.
   * The others are wanted on face 1; what stays undecided is asked for on face 2 afterwards. The
   * stage's questions come last.
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
      } else {
        wanted.add(new Wanted(item.target(), 0, item.expectedSi()));
      }
    }
    return List.copyOf(wanted);
  }

  /** Whether it is answered with yes or no, not measured. */
  public boolean isQuestion() {
    return target.quantity() == MeasuredQuantity.ATTRIBUTE;
  }

  /**
   * Its name among the targets of its stage: what is measured, the target, the face if it has one,
   * such as {@code tilt column.A3/across 2}.
   */
  public String name() {
    String named = target.quantity().text() + " " + target.text();
    return face == 0 ? named : named + " " + face;
  }

  /** What is asked for, for a person. */
  public String words() {
    return TargetWords.of(target) + (face == 0 ? "" : ", face " + face);
  }

  /**
   * Which of a stage's targets a person means: as {@link #name} says it, or without what is
   * measured; a tilt on either face, also where the list asks for one only.
   */
  static Optional<Wanted> named(List<Wanted> all, String name) {
    Optional<Wanted> exact = all.stream().filter(wanted -> wanted.isCalled(name)).findFirst();
    return name.matches(".+ [12]") && exact.isEmpty()
        ? named(all, name.substring(0, name.length() - 2))
            .filter(wanted -> wanted.face() != 0)
            .map(wanted -> wanted.onFace(name.endsWith("1") ? 1 : 2))
        : exact;
  }

  private boolean isCalled(String name) {
    String text = face == 0 ? target.text() : target.text() + " " + face;
    return name.equals(text)
        || name.equals(name())
        || name.equals(target.text())
        || name.equals(target.quantity().text() + " " + target.text());
  }

  private Wanted onFace(int other) {
    return new Wanted(target, other, expectedSi);
  }

  /** Whether a value is of the kind that is wanted. */
  boolean takes(Delivered delivered) {
    return isQuestion()
        ? delivered.isAnswer()
        : !delivered.isAnswer() && target.quantity().dimension() == delivered.dimension();
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
