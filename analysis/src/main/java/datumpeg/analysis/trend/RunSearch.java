package datumpeg.analysis.trend;

import java.util.ArrayList;
import java.util.List;

/** Looks for one rule in a chart, in one pass. */
final class RunSearch {
  private final ControlChart chart;
  private final RunRule rule;
  private final List<RunSignal> found = new ArrayList<>();

  RunSearch(ControlChart chart, RunRule rule) {
    this.chart = chart;
    this.rule = rule;
  }

  List<RunSignal> signals() {
    switch (rule.kind()) {
      case BEYOND_ON_ONE_SIDE, ONE_SIDE -> {
        amongWindow(1);
        amongWindow(-1);
      }
      case RISING_OR_FALLING -> {
        steps(1);
        steps(-1);
      }
      case NEAR_THE_CENTRE, BEYOND_ON_EITHER_SIDE -> amongWindow(0);
      case ALTERNATING -> alternating();
    }
    return found;
  }

  /** So many hits among the last so many points, the newest of which is a hit. */
  private void amongWindow(int side) {
    int hits = 0;
    for (int i = 0; i < chart.size(); i++) {
      hits += isHit(i, side) ? 1 : 0;
      int left = i - rule.window();
      hits -= left >= 0 && isHit(left, side) ? 1 : 0;
      if (hits >= rule.hits() && isHit(i, side)) {
        add(firstHit(Math.max(0, left + 1), side), i, side);
      }
    }
  }

  private int firstHit(int from, int side) {
    int first = from;
    while (!isHit(first, side)) {
      first++;
    }
    return first;
  }

  private boolean isHit(int index, int side) {
    double out = chart.sigmasOut(index);
    return switch (rule.kind()) {
      case NEAR_THE_CENTRE -> Math.abs(out) < rule.sigmas();
      case BEYOND_ON_EITHER_SIDE -> Math.abs(out) > rule.sigmas();
      default -> out * side > rule.sigmas();
    };
  }

  private void steps(int side) {
    int run = 1;
    for (int i = 1; i < chart.size(); i++) {
      run = step(i) == side ? run + 1 : 1;
      if (run >= rule.hits()) {
        add(i - run + 1, i, side);
      }
    }
  }

  private void alternating() {
    int run = 2;
    for (int i = 2; i < chart.size(); i++) {
      run = step(i) * step(i - 1) < 0 ? run + 1 : 2;
      if (run >= rule.hits()) {
        add(i - run + 1, i, 0);
      }
    }
  }

  private int step(int index) {
    return (int) Math.signum(chart.plotted(index) - chart.plotted(index - 1));
  }

  /** Joins a run to the one before it if they overlap or touch and are on the same side. */
  private void add(int first, int last, int side) {
    int previous = found.size() - 1;
    if (previous >= 0
        && found.get(previous).side() == side
        && rule.window() > 1
        && first <= found.get(previous).last()) {
      found.set(previous, new RunSignal(rule, found.get(previous).first(), last, side));
    } else {
      found.add(new RunSignal(rule, first, last, side));
    }
  }
}
