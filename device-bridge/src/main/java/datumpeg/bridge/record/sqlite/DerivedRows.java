package datumpeg.bridge.record.sqlite;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.derived.StageCount;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rows of the derived tables as values, and back. */
final class DerivedRows {
  static final String STAGE_COLUMNS =
      "stage, measured, hold_point, conforming, undecided, nonconforming, stale, no_limit,"
          + " not_measured";

  static final String OUTCOME_COLUMNS =
      "stage, at, meters, check_id, target, round, unit, nominal, measured, deviation, uncertainty,"
          + " coverage, lower, upper, limit_source, probability, verdict, stale";

  private static final String BETWEEN_METERS = "\n";

  private DerivedRows() {}

  /** The columns {@link #STAGE_COLUMNS} from a place on. */
  static StageCount stage(ResultSet row, int at) throws SQLException {
    return new StageCount(
        row.getString(at),
        row.getInt(at + 1) == 1,
        HoldPoint.State.valueOf(row.getString(at + 2)),
        row.getInt(at + 3),
        row.getInt(at + 4),
        row.getInt(at + 5),
        row.getInt(at + 6),
        row.getInt(at + 7),
        row.getInt(at + 8));
  }

  static void write(PreparedStatement to, int at, StageCount stage) throws SQLException {
    to.setString(at, stage.stage());
    to.setInt(at + 1, stage.measured() ? 1 : 0);
    to.setString(at + 2, stage.holdPoint().name());
    to.setInt(at + 3, stage.conforming());
    to.setInt(at + 4, stage.undecided());
    to.setInt(at + 5, stage.nonconforming());
    to.setInt(at + 6, stage.stale());
    to.setInt(at + 7, stage.noLimit());
    to.setInt(at + 8, stage.notMeasured());
  }

  /** The columns site, crew, slab_by, started, trouble from a place on. */
  static JobOverview overview(ResultSet row, int at, List<StageCount> stages) throws SQLException {
    String started = row.getString(at + 3);
    return new JobOverview(
        row.getString(at),
        row.getString(at + 1),
        row.getString(at + 2),
        started.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(started)),
        stages,
        row.getString(at + 4));
  }

  static void write(PreparedStatement to, int at, JobOverview overview) throws SQLException {
    to.setString(at, overview.site());
    to.setString(at + 1, overview.crew());
    to.setString(at + 2, overview.slabBy());
    to.setString(at + 3, overview.started().map(LocalDate::toString).orElse(""));
    to.setString(at + 4, overview.trouble());
  }

  /** The columns {@link #OUTCOME_COLUMNS} from a place on. */
  static KeptOutcome outcome(ResultSet row, int at, OneOfEach known) throws SQLException {
    String meters = row.getString(at + 2);
    String verdict = row.getString(at + 16);
    String source = row.getString(at + 14);
    Outcome outcome =
        new Outcome(
            known.of(row.getString(at + 3)),
            known.of(row.getString(at + 4)),
            row.getInt(at + 5),
            OutcomeUnit.valueOf(row.getString(at + 6)),
            number(row, at + 7),
            row.getDouble(at + 8),
            row.getDouble(at + 9),
            row.getDouble(at + 10),
            row.getDouble(at + 11),
            source == null
                ? Optional.empty()
                : Optional.of(
                    known.of(new Limits(number(row, at + 12), number(row, at + 13), source))),
            number(row, at + 15),
            verdict == null ? Optional.empty() : Optional.of(Verdict.valueOf(verdict)),
            row.getInt(at + 17) == 1,
            "",
            "",
            List.of());
    return new KeptOutcome(
        known.of(row.getString(at)),
        outcome,
        Instant.parse(row.getString(at + 1)),
        meters.isEmpty() ? List.of() : known.of(List.of(meters.split(BETWEEN_METERS, -1))));
  }

  static void write(PreparedStatement to, int at, KeptOutcome kept) throws SQLException {
    Outcome outcome = kept.outcome();
    Optional<Limits> limits = outcome.limits();
    to.setString(at, kept.stage());
    to.setString(at + 1, kept.at().toString());
    to.setString(at + 2, String.join(BETWEEN_METERS, kept.meters()));
    to.setString(at + 3, outcome.check());
    to.setString(at + 4, outcome.target());
    to.setInt(at + 5, outcome.round());
    to.setString(at + 6, outcome.unit().name());
    write(to, at + 7, outcome.nominal());
    to.setDouble(at + 8, outcome.measured());
    to.setDouble(at + 9, outcome.deviation());
    to.setDouble(at + 10, outcome.expandedUncertainty());
    to.setDouble(at + 11, outcome.coverage());
    write(to, at + 12, limits.map(Limits::lower).orElse(OptionalDouble.empty()));
    write(to, at + 13, limits.map(Limits::upper).orElse(OptionalDouble.empty()));
    to.setString(at + 14, limits.map(Limits::source).orElse(null));
    write(to, at + 15, outcome.probability());
    to.setString(at + 16, outcome.verdict().map(Verdict::name).orElse(null));
    to.setInt(at + 17, outcome.stale() ? 1 : 0);
  }

  private static OptionalDouble number(ResultSet row, int at) throws SQLException {
    double number = row.getDouble(at);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  private static void write(PreparedStatement to, int at, OptionalDouble number)
      throws SQLException {
    if (number.isPresent()) {
      to.setDouble(at, number.getAsDouble());
    } else {
      to.setNull(at, Types.REAL);
    }
  }
}
