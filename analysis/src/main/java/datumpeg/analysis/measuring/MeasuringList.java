package datumpeg.analysis.measuring;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.UnknownPointException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The ordered targets of a stage, in the order in which a person walks: all shots from one corner
 * before going to the next, out along side A and back along side B.
 *
 * @param items each target once
 */
public record MeasuringList(List<Item> items) {

  /**
   * One target.
   *
   * @param expectedSi what the plan says it reads, in metres or radians; empty where the plan says
   *     nothing, as for levels above an unknown plane
   */
  public record Item(Target target, OptionalDouble expectedSi) {}

  public MeasuringList {
    items = List.copyOf(items);
  }

  /** The list that serves the stage's checks, its questions last. */
  public static MeasuringList of(SetOut setOut, Stage stage) {
    List<Item> items = new ArrayList<>();
    targets(setOut, stage)
        .forEach(target -> items.add(new Item(target, expectedSi(setOut, target))));
    return new MeasuringList(items);
  }

  /** The targets of that list, in its order, without what the plan says of them. */
  public static Set<Target> targets(SetOut setOut, Stage stage) {
    CheckTargets checkTargets = new CheckTargets(setOut);
    Set<Target> targets = new LinkedHashSet<>();
    stage.checks().forEach(check -> targets.addAll(checkTargets.of(check)));
    stage
        .questions()
        .keySet()
        .forEach(name -> targets.add(Target.parse(MeasuredQuantity.ATTRIBUTE, name)));
    return targets;
  }

  public List<Target> targets() {
    return items.stream().map(Item::target).toList();
  }

  /**
   * What the plan says a target reads.
   *
   * @return metres or radians; empty where the plan says nothing or does not have the points
   */
  public static OptionalDouble expectedSi(SetOut setOut, Target target) {
    return switch (target.quantity()) {
      case DISTANCE -> nominal(setOut, target.first(), target.second());
      case TILT, OFFSET -> OptionalDouble.of(0);
      case HEIGHT, STAFF, PLUMB_OFFSET, ATTRIBUTE -> OptionalDouble.empty();
    };
  }

  private static OptionalDouble nominal(SetOut setOut, PointName first, PointName second) {
    try {
      return OptionalDouble.of(setOut.nominalDistanceMetres(first, second));
    } catch (UnknownPointException e) {
      return OptionalDouble.empty();
    }
  }
}
