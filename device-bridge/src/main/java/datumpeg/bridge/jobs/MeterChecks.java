package datumpeg.bridge.jobs;

import datumpeg.analysis.drift.CheckMethod;
import datumpeg.analysis.drift.CheckValues;
import datumpeg.analysis.drift.DatedCheck;
import datumpeg.analysis.drift.DriftHistory;
import datumpeg.analysis.drift.MeterCheck;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.MeterCheckEntry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Checks of meters in the record as the analysis wants them. */
public final class MeterChecks {
  private static final Logger LOG = LoggerFactory.getLogger(MeterChecks.class);

  private MeterChecks() {}

  /** The checks, each by what the job says now of its meter. */
  public static DriftHistory history(Job job, List<StoredEntry<MeterCheckEntry>> stored) {
    List<DatedCheck> checks = new ArrayList<>();
    for (StoredEntry<MeterCheckEntry> row : stored) {
      MeterCheckEntry entry = row.entry();
      try {
        checks.add(
            new DatedCheck(entry.meter(), entry.checkedAt().toInstant(), evaluate(job, entry)));
      } catch (IllegalArgumentException e) {
        LOG.warn("a check of the meter {} cannot be worked out and is left out", entry.meter(), e);
      }
    }
    return new DriftHistory(checks);
  }

  /**
   * What a check comes to by what the job says of its meter.
   *
   * @throws IllegalArgumentException if the method is unknown or its values do not belong
   */
  public static MeterCheck evaluate(Job job, MeterCheckEntry entry) {
    CheckMethod method =
        CheckMethod.ofText(entry.method())
            .orElseThrow(() -> new IllegalArgumentException("there is no check " + entry.method()));
    Map<String, List<Double>> values = new LinkedHashMap<>();
    entry
        .values()
        .forEach(
            (label, texts) ->
                values.put(label, texts.stream().map(text -> si(method, text)).toList()));
    return MeterCheck.of(
        new CheckValues(method, values),
        job.meter(entry.meter(), quantity(method)),
        job.decision());
  }

  private static double si(CheckMethod method, String text) {
    return method.dimension() == Dimension.ANGLE
        ? Quantity.angleRadians(text)
        : Quantity.lengthMetres(text);
  }

  private static MeasuredQuantity quantity(CheckMethod method) {
    return switch (method) {
      case REVERSAL -> MeasuredQuantity.TILT;
      case TWO_PEG -> MeasuredQuantity.STAFF;
      default -> MeasuredQuantity.DISTANCE;
    };
  }
}
