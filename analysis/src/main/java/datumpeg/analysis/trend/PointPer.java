package datumpeg.analysis.trend;

/** What one point of a series is. */
public enum PointPer {
  /** One outcome. Those of one job share its crew, its day and mostly its meter. */
  TARGET,
  /** The mean of a job's outcomes: what a chart of jobs must use, since jobs are independent. */
  JOB
}
