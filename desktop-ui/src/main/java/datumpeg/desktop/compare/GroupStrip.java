package datumpeg.desktop.compare;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One group as it is drawn, in the unit shown.
 *
 * @param name the group's, or that it has none
 * @param counts how many jobs and outcomes, in words
 * @param values every outcome
 * @param jobMeans the mean of each job
 * @param mean of its jobs
 * @param halfWidth half the interval of the mean; empty for a single job
 * @param numbers mean, interval and spread in words
 */
record GroupStrip(
    String name,
    String counts,
    List<Double> values,
    List<Double> jobMeans,
    double mean,
    OptionalDouble halfWidth,
    String numbers) {
  GroupStrip {
    values = List.copyOf(values);
    jobMeans = List.copyOf(jobMeans);
  }

  /** The strip in words. */
  String spoken() {
    return name + ": " + counts + ". " + numbers;
  }
}
