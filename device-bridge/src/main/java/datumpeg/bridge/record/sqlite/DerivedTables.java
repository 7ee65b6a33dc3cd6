package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.derived.DerivedStore;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.derived.ListedJob;
import datumpeg.bridge.derived.StageCount;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.Mark;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The tables of what follows from a record. */
final class DerivedTables implements DerivedStore {
  private static final String OF_JOB = " WHERE organisation = ? AND job = ?";

  private static final String LIST =
      "INSERT INTO job (organisation, job, name, revision, readings, voids, last_at, touched)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (organisation, job) DO UPDATE SET"
          + " name = excluded.name, revision = excluded.revision, readings = excluded.readings,"
          + " voids = excluded.voids, last_at = excluded.last_at, touched = excluded.touched";

  private static final String JOBS =
      "SELECT job_no, organisation, job, name, revision, readings, voids, last_at,"
          + " settled >= touched, settled, site, crew, slab_by, started, trouble FROM job"
          + " ORDER BY organisation, job";

  private final Database database;
  private final OneOfEach known = new OneOfEach();

  DerivedTables(Database database) {
    this.database = database;
  }

  @Override
  public Mark mark() {
    return database.read("see how far it is known", DerivedTables::mark);
  }

  private static Mark mark(Database inside) throws SQLException {
    try (ResultSet result =
        inside.statement("SELECT mark_row, mark_digest FROM basis").executeQuery()) {
      return result.next() ? new Mark(result.getLong(1), result.getString(2)) : Mark.START;
    }
  }

  @Override
  public List<ListedJob> jobs() {
    return database.read("list the jobs", DerivedTables::jobs);
  }

  private static List<ListedJob> jobs(Database inside) throws SQLException {
    Map<Long, List<StageCount>> stages = new HashMap<>();
    String counts =
        "SELECT job_no, " + DerivedRows.STAGE_COLUMNS + " FROM stage ORDER BY job_no, position";
    try (ResultSet row = inside.statement(counts).executeQuery()) {
      while (row.next()) {
        stages
            .computeIfAbsent(row.getLong(1), no -> new ArrayList<>())
            .add(DerivedRows.stage(row, 2));
      }
    }
    List<ListedJob> jobs = new ArrayList<>();
    try (ResultSet row = inside.statement(JOBS).executeQuery()) {
      while (row.next()) {
        jobs.add(listed(row, stages.getOrDefault(row.getLong(1), List.of())));
      }
    }
    return jobs;
  }

  private static ListedJob listed(ResultSet row, List<StageCount> stages) throws SQLException {
    JobSummary summary =
        new JobSummary(
            new JobKey(row.getString(2), row.getString(3)),
            row.getString(4),
            row.getInt(5),
            row.getLong(6),
            row.getLong(7),
            Instant.parse(row.getString(8)));
    Optional<JobOverview> overview =
        row.getLong(10) < 0 ? Optional.empty() : Optional.of(DerivedRows.overview(row, 11, stages));
    return new ListedJob(summary, overview, row.getInt(9) == 1);
  }

  @Override
  public Optional<JobOverview> overview(JobKey job) {
    return database.read(
        "look up " + job,
        inside -> {
          String sql =
              "SELECT site, crew, slab_by, started, trouble FROM job"
                  + OF_JOB
                  + " AND settled >= 0";
          List<StageCount> stages = stages(inside, job);
          try (ResultSet row = forJob(inside, sql, job).executeQuery()) {
            return row.next()
                ? Optional.of(DerivedRows.overview(row, 1, stages))
                : Optional.empty();
          }
        });
  }

  private static List<StageCount> stages(Database inside, JobKey job) throws SQLException {
    String sql =
        "SELECT "
            + DerivedRows.STAGE_COLUMNS.replaceAll("(\\w+)", "stage.$1")
            + " FROM stage JOIN job USING (job_no)"
            + OF_JOB
            + " ORDER BY position";
    List<StageCount> stages = new ArrayList<>();
    try (ResultSet row = forJob(inside, sql, job).executeQuery()) {
      while (row.next()) {
        stages.add(DerivedRows.stage(row, 1));
      }
    }
    return stages;
  }

  @Override
  public void list(Mark from, Mark now, Collection<JobSummary> touched) {
    database.write(
        "list touched jobs",
        inside -> {
          // With a gap between what is kept and what the caller knew, jobs could go unnoticed.
          if (mark(inside).row() >= from.row()) {
            listAll(inside, now, touched);
          }
          return touched.size();
        });
  }

  @Override
  public void listAfresh(Mark now, Collection<JobSummary> all) {
    database.write(
        "list all jobs",
        inside -> {
          // Rows are numbered anew, so that what was settled by number is settled no longer.
          inside
              .statement("UPDATE job SET settled = min(settled, 0), touched = -1")
              .executeUpdate();
          inside.statement("UPDATE basis SET mark_row = 0").executeUpdate();
          listAll(inside, now, all);
          inside.statement("DELETE FROM job WHERE touched < 0").executeUpdate();
          return all.size();
        });
  }

  private static void listAll(Database inside, Mark now, Collection<JobSummary> touched)
      throws SQLException {
    for (JobSummary summary : touched) {
      PreparedStatement list = inside.statement(LIST);
      list.setString(1, summary.key().organisation());
      list.setString(2, summary.key().job());
      list.setString(3, summary.name());
      list.setInt(4, summary.revision());
      list.setLong(5, summary.readingCount());
      list.setLong(6, summary.voidCount());
      list.setString(7, summary.lastAt().toString());
      list.setLong(8, Math.max(1, now.row()));
      list.executeUpdate();
    }
    PreparedStatement forward =
        inside.statement("UPDATE basis SET mark_row = ?, mark_digest = ? WHERE mark_row <= ?");
    forward.setLong(1, now.row());
    forward.setString(2, now.digest());
    forward.setLong(3, now.row());
    forward.executeUpdate();
  }

  @Override
  public String key(JobKey job) {
    return database.read(
        "look up " + job,
        inside -> {
          PreparedStatement statement = forJob(inside, "SELECT key FROM job" + OF_JOB, job);
          try (ResultSet result = statement.executeQuery()) {
            return result.next() ? result.getString(1) : "";
          }
        });
  }

  @Override
  public void settle(
      JobKey job, long row, String key, JobOverview overview, Collection<KeptOutcome> outcomes) {
    database.write(
        "keep what was worked out of " + job,
        inside -> {
          @Nullable Long number = number(inside, job);
          if (number != null) {
            write(inside, number, row, key, overview);
            writeStages(inside, number, overview.stages());
            writeOutcomes(inside, number, outcomes);
          }
          return row;
        });
  }

  private static void write(
      Database inside, long number, long row, String key, JobOverview overview)
      throws SQLException {
    PreparedStatement update =
        inside.statement(
            "UPDATE job SET settled = ?, key = ?, site = ?, crew = ?, slab_by = ?, started = ?,"
                + " trouble = ? WHERE job_no = ?");
    update.setLong(1, Math.max(1, row));
    update.setString(2, key);
    DerivedRows.write(update, 3, overview);
    update.setLong(8, number);
    update.executeUpdate();
  }

  private static void writeStages(Database inside, long number, Collection<StageCount> stages)
      throws SQLException {
    clear(inside, "stage", number);
    int position = 0;
    for (StageCount stage : stages) {
      PreparedStatement insert =
          inside.statement(
              "INSERT INTO stage (job_no, position, "
                  + DerivedRows.STAGE_COLUMNS
                  + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
      insert.setLong(1, number);
      insert.setInt(2, position++);
      DerivedRows.write(insert, 3, stage);
      insert.executeUpdate();
    }
  }

  private static void writeOutcomes(Database inside, long number, Collection<KeptOutcome> outcomes)
      throws SQLException {
    clear(inside, "outcome", number);
    int position = 0;
    for (KeptOutcome outcome : outcomes) {
      PreparedStatement insert =
          inside.statement(
              "INSERT INTO outcome (job_no, position, "
                  + DerivedRows.OUTCOME_COLUMNS
                  + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
      insert.setLong(1, number);
      insert.setInt(2, position++);
      DerivedRows.write(insert, 3, outcome);
      insert.executeUpdate();
    }
  }

  private static void clear(Database inside, String table, long number) throws SQLException {
    PreparedStatement clear = inside.statement("DELETE FROM " + table + " WHERE job_no = ?");
    clear.setLong(1, number);
    clear.executeUpdate();
  }

  @Override
  public void settleAgain(JobKey job, long row) {
    database.write(
        "keep what was worked out of " + job,
        inside -> {
          PreparedStatement update =
              inside.statement(
                  "UPDATE job SET settled = max(settled, ?) WHERE organisation = ? AND job = ?");
          update.setLong(1, Math.max(1, row));
          update.setString(2, job.organisation());
          update.setString(3, job.job());
          return update.executeUpdate();
        });
  }

  @Override
  public Map<JobKey, List<KeptOutcome>> outcomes() {
    return database.read("read all outcomes", this::outcomes);
  }

  private Map<JobKey, List<KeptOutcome>> outcomes(Database inside) throws SQLException {
    Map<JobKey, List<KeptOutcome>> all = new HashMap<>();
    String sql =
        "SELECT organisation, job, "
            + DerivedRows.OUTCOME_COLUMNS.replaceAll("(\\w+)", "outcome.$1")
            + " FROM outcome JOIN job USING (job_no) ORDER BY job_no, position";
    try (ResultSet row = inside.statement(sql).executeQuery()) {
      while (row.next()) {
        all.computeIfAbsent(
                new JobKey(row.getString(1), row.getString(2)), key -> new ArrayList<>())
            .add(DerivedRows.outcome(row, 3, known));
      }
    }
    return all;
  }

  @Override
  public List<KeptOutcome> outcomes(JobKey job) {
    return database.read(
        "read the outcomes of " + job,
        inside -> {
          List<KeptOutcome> found = new ArrayList<>();
          @Nullable Long number = number(inside, job);
          if (number != null) {
            PreparedStatement statement =
                inside.statement(
                    "SELECT "
                        + DerivedRows.OUTCOME_COLUMNS
                        + " FROM outcome WHERE job_no = ? ORDER BY position");
            statement.setLong(1, number);
            try (ResultSet row = statement.executeQuery()) {
              while (row.next()) {
                found.add(DerivedRows.outcome(row, 1, known));
              }
            }
          }
          return found;
        });
  }

  private static @Nullable Long number(Database inside, JobKey job) throws SQLException {
    PreparedStatement statement = forJob(inside, "SELECT job_no FROM job" + OF_JOB, job);
    try (ResultSet result = statement.executeQuery()) {
      return result.next() ? result.getLong(1) : null;
    }
  }

  private static PreparedStatement forJob(Database inside, String sql, JobKey job)
      throws SQLException {
    PreparedStatement statement = inside.statement(sql);
    statement.setString(1, job.organisation());
    statement.setString(2, job.job());
    return statement;
  }

  @Override
  public void close() {
    database.close();
  }
}
