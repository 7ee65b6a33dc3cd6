package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobSummary;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Sums up every job in one statement that reads indexes only. The time of the last row is looked up
 * once for each kind and job: it stands at the end of its stretch of the index.
 */
final class JobSummaries {
  private static final String SUMS =
      """
      WITH counted AS (
        SELECT job, organisation,
               sum(n) FILTER (WHERE kind = 'reading') AS readings,
               sum(n) FILTER (WHERE kind = 'void') AS voids,
               max(last_at) AS last_at
        FROM (SELECT job, organisation, kind, n,
                     (SELECT max(at) FROM entry
                      WHERE entry.job = kinds.job AND entry.organisation = kinds.organisation
                        AND entry.kind = kinds.kind) AS last_at
              FROM (SELECT job, organisation, kind, count(*) AS n
                    FROM entry WHERE %s GROUP BY job, organisation, kind) AS kinds)
        GROUP BY job, organisation
      ),
      newest AS (
        SELECT job, organisation, max(json_extract(body, '$.revision')) AS revision,
               json_extract(body, '$.name') AS name
        FROM entry WHERE kind = 'job-revision' AND %s GROUP BY job, organisation
      )
      SELECT organisation, job, coalesce(name, ''), coalesce(revision, 0), coalesce(readings, 0),
             coalesce(voids, 0), last_at
      FROM counted LEFT JOIN newest USING (job, organisation)
      """;

  private static final String ALL = String.format(SUMS, "job > ''", "job > ''");
  private static final String ONE =
      String.format(SUMS, "job = ? AND organisation = ?", "job = ? AND organisation = ?");

  private JobSummaries() {}

  static List<JobSummary> all(Database database) throws SQLException {
    List<JobSummary> summaries = read(database.statement(ALL));
    summaries.sort(
        Comparator.comparing((JobSummary summary) -> summary.key().organisation())
            .thenComparing(summary -> summary.key().job()));
    return summaries;
  }

  static Optional<JobSummary> one(Database database, JobKey job) throws SQLException {
    PreparedStatement statement = database.statement(ONE);
    for (int i = 1; i <= 3; i += 2) {
      statement.setString(i, job.job());
      statement.setString(i + 1, job.organisation());
    }
    return read(statement).stream().findFirst();
  }

  private static List<JobSummary> read(PreparedStatement statement) throws SQLException {
    List<JobSummary> summaries = new ArrayList<>();
    try (ResultSet result = statement.executeQuery()) {
      while (result.next()) {
        summaries.add(
            new JobSummary(
                new JobKey(result.getString(1), result.getString(2)),
                result.getString(3),
                result.getInt(4),
                result.getLong(5),
                result.getLong(6),
                Instant.parse(result.getString(7))));
      }
    }
    return summaries;
  }
}
