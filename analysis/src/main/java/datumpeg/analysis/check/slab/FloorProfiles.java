package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Levels at equal steps along straight lines, and what they say of the floor: bends q = h(i) − 2
 * h(i−1) + h(i−2) for FF, rises z = h(i) − h(i−10) for FL (ASTM E1155, from memory).
 */
final class FloorProfiles {
  private static final Pattern POINT = Pattern.compile("profile\\.([A-Za-z0-9_]+)@\\(([0-9.]+)\\)");

  /** A point this far from its step is not on the profile. */
  private static final double OFF_STEP_METRES = 0.02;

  /** Ten steps: 3 m or 10 ft. */
  private static final int RISE_STEPS = 10;

  private static final int BEND_STEPS = 2;

  private final FlatnessPlan plan;
  private final Map<String, TreeMap<Integer, Linearised>> lines = new TreeMap<>();
  private final List<String> offStep = new ArrayList<>();

  FloorProfiles(FlatnessPlan plan, AdjustedLevels levels) {
    this.plan = plan;
    levels.names().forEach(name -> put(name, levels));
  }

  private void put(String name, AdjustedLevels levels) {
    Matcher match = POINT.matcher(name);
    if (!match.matches()) {
      return;
    }
    double along = Double.parseDouble(match.group(2));
    long step = Math.round(along / plan.stepMetres());
    if (Math.abs(along - step * plan.stepMetres()) > OFF_STEP_METRES) {
      offStep.add(name);
      return;
    }
    String first = levels.names().get(0);
    lines
        .computeIfAbsent(match.group(1), line -> new TreeMap<>())
        .put((int) step, levels.linearisedDifference(first, name));
  }

  /** Lines of which points were read. */
  Set<String> names() {
    return lines.keySet();
  }

  /** FF by line, of those long enough. */
  Map<String, FNumber> flatness() {
    Map<String, FNumber> numbers = new LinkedHashMap<>();
    double constant =
        plan.stepMetres() > FlatnessPlan.METRIC_STEP_METRES + OFF_STEP_METRES / 10
            ? FNumber.FOOT_FLATNESS_METRES
            : FNumber.METRIC_FLATNESS_METRES;
    lines.forEach(
        (name, line) ->
            FNumber.of(constant, bends(line), BEND_STEPS).ifPresent(f -> numbers.put(name, f)));
    return numbers;
  }

  /** FL by line, of those long enough. */
  Map<String, FNumber> levelness() {
    Map<String, FNumber> numbers = new LinkedHashMap<>();
    lines.forEach(
        (name, line) ->
            FNumber.of(FNumber.LEVELNESS_METRES, rises(line), RISE_STEPS)
                .ifPresent(f -> numbers.put(name, f)));
    return numbers;
  }

  private static List<Linearised> bends(Map<Integer, Linearised> line) {
    List<Linearised> bends = new ArrayList<>();
    line.forEach(
        (step, height) -> {
          Linearised middle = line.get(step - 1);
          Linearised before = line.get(step - 2);
          if (middle != null && before != null) {
            bends.add(height.minus(middle).minus(middle.minus(before)));
          }
        });
    return bends;
  }

  private static List<Linearised> rises(Map<Integer, Linearised> line) {
    List<Linearised> rises = new ArrayList<>();
    line.forEach(
        (step, height) ->
            Optional.ofNullable(line.get(step - RISE_STEPS))
                .ifPresent(before -> rises.add(height.minus(before))));
    return rises;
  }

  /** Lines too short for a number, and points beside the steps. */
  List<Note> notes() {
    List<Note> notes = new ArrayList<>();
    if (!offStep.isEmpty()) {
      notes.add(
          new Note(
              Note.Kind.UNDETERMINED,
              "Not at a step of "
                  + LengthDisplay.decimal(plan.stepMetres() * 1000, 1)
                  + " mm along its profile, and left out: "
                  + String.join(", ", offStep)
                  + ".",
              List.of()));
    }
    noNumber("FF", flatness()).ifPresent(notes::add);
    noNumber("FL", levelness()).ifPresent(notes::add);
    return notes;
  }

  private Optional<Note> noNumber(String what, Map<String, FNumber> numbers) {
    List<String> without =
        lines.keySet().stream().filter(line -> !numbers.containsKey(line)).toList();
    return without.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Note(
                Note.Kind.UNDETERMINED,
                "No "
                    + what
                    + " of "
                    + String.join(", ", without)
                    + ": it takes 3 values, each from "
                    + (what.equals("FF") ? "three points in a row" : "two points ten steps apart")
                    + ", and a floor that is not perfectly even.",
                List.of()));
  }
}
