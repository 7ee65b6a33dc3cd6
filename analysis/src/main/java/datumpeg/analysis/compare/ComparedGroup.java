package datumpeg.analysis.compare;

import datumpeg.analysis.stat.StudentT;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The jobs of one crew, site, slab layer or meter.
 *
 * @param name empty if the jobs do not say
 * @param jobs at least one
 * @param confidence of its interval
 */
public record ComparedGroup(String name, List<JobValue> jobs, double confidence) {
  public ComparedGroup {
    jobs = List.copyOf(jobs);
  }

  /** The mean of its jobs' means: its bias. */
  public double mean() {
    return means().stream().mapToDouble(mean -> mean).average().orElseThrow();
  }

  List<Double> means() {
    return jobs.stream().map(JobValue::mean).toList();
  }

  public int jobCount() {
    return jobs.size();
  }

  public int outcomeCount() {
    return jobs.stream().mapToInt(job -> job.values().size()).sum();
  }

  /** Standard deviation of its jobs' means, measuring included; empty for a single job. */
  public OptionalDouble observedSpread() {
    if (jobs.size() < 2) {
      return OptionalDouble.empty();
    }
    double mean = mean();
    double squares = means().stream().mapToDouble(m -> (m - mean) * (m - mean)).sum();
    return OptionalDouble.of(Math.sqrt(squares / (jobs.size() - 1)));
  }

  /** Root mean square of the standard uncertainties of its jobs' means. */
  public double measuringPart() {
    return combined() / Math.sqrt(jobs.size());
  }

  /**
   * The spread with measuring taken out, √(s² − ū²): how much the jobs themselves differ. 0 where
   * measuring alone explains what is seen; empty for a single job.
   */
  public OptionalDouble ownSpread() {
    OptionalDouble seen = observedSpread();
    if (seen.isEmpty()) {
      return seen;
    }
    double left = seen.getAsDouble() * seen.getAsDouble() - measuringPart() * measuringPart();
    return OptionalDouble.of(Math.sqrt(Math.max(0, left)));
  }

  /**
   * Standard error of the mean: s/√n, but never less than measuring alone gives, √(Σu²)/n. Empty
   * for a single job.
   */
  OptionalDouble standardError() {
    OptionalDouble seen = observedSpread();
    int count = jobs.size();
    return seen.isEmpty()
        ? seen
        : OptionalDouble.of(Math.max(seen.getAsDouble() / Math.sqrt(count), combined() / count));
  }

  /** Half the width of the mean's interval by Student's t; empty for a single job. */
  public OptionalDouble halfWidth() {
    OptionalDouble error = standardError();
    return error.isEmpty()
        ? error
        : OptionalDouble.of(
            StudentT.quantile(0.5 + confidence / 2, jobs.size() - 1.0) * error.getAsDouble());
  }

  /** Of each job with two outcomes or more, how far they scatter within it. */
  List<Double> scatters() {
    return jobs.stream()
        .map(JobValue::scatter)
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .toList();
  }

  /** Mean of the scatter within its jobs; empty where no job has two outcomes. */
  public OptionalDouble meanScatter() {
    return scatters().stream().mapToDouble(scatter -> scatter).average();
  }

  private double combined() {
    return Estimate.combine(jobs.stream().mapToDouble(JobValue::standardUncertainty).toArray());
  }
}
