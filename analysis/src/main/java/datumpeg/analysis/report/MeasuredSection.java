package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.Markup;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** With which meters it was measured, how accurate they are, and the readings themselves. */
final class MeasuredSection {
  private static final int LONGEST_ID = 12;

  private final Job job;
  private final LengthFigures figures;

  MeasuredSection(Job job, LengthFigures figures) {
    this.job = job;
    this.figures = figures;
  }

  void write(Markup page, List<Reading> readings, ReadingNumbers numbers) {
    Map<String, Reading> byId = new LinkedHashMap<>();
    readings.forEach(reading -> byId.put(reading.id(), reading));
    byId.keySet().retainAll(Set.copyOf(numbers.ids()));
    page.open("section").element("h2", "Meters and readings");
    meters(page, byId);
    readings(page, byId, numbers);
    page.close();
  }

  private void meters(Markup page, Map<String, Reading> used) {
    Map<String, Meter> meters = new LinkedHashMap<>();
    used.values().stream()
        .filter(reading -> reading.target().quantity() != MeasuredQuantity.ATTRIBUTE)
        .forEach(
            reading ->
                meters.put(
                    reading.meter(), job.meter(reading.meter(), reading.target().quantity())));
    page.open("ul");
    (meters.isEmpty() ? job.meters() : meters)
        .forEach((id, meter) -> page.element("li", meter(id, meter)));
    job.pointDefinitionsMetres()
        .forEach(
            (feature, metres) ->
                page.element(
                    "li",
                    "Points of the "
                        + feature
                        + " are themselves defined to ± "
                        + figures.number(2 * metres)
                        + " "
                        + figures.unit()
                        + " (k = 2)."));
    page.close();
  }

  private String meter(String id, Meter meter) {
    MeterAccuracy accuracy = meter.accuracy();
    double each = 2 * Math.sqrt(accuracy.independentVariance() + square(accuracy.common()));
    String perMetre =
        accuracy.perMetre() == 0
            ? ""
            : ", and "
                + LengthDisplay.decimal(accuracy.perMetre() * 2e6, 0)
                + " parts in a million of the length";
    return "Meter "
        + (id.isEmpty() ? "not named" : id)
        + " ("
        + meter.quantity().text()
        + "): one reading ± "
        + value(meter.quantity(), each)
        + " (k = 2)"
        + perMetre
        + ", shown in steps of "
        + value(meter.quantity(), accuracy.resolution())
        + "; stated by: "
        + meter.stated()
        + ".";
  }

  private String value(MeasuredQuantity quantity, double value) {
    return quantity == MeasuredQuantity.TILT
        ? LengthDisplay.decimal(StrictMath.toDegrees(value), 2) + "°"
        : figures.number(value) + " " + figures.unit();
  }

  private static double square(double value) {
    return value * value;
  }

  private void readings(Markup page, Map<String, Reading> byId, ReadingNumbers numbers) {
    if (byId.isEmpty()) {
      List<String> ids = numbers.ids();
      String list =
          ids.stream()
              .map(id -> numbers.text(List.of(id)) + " = " + id)
              .collect(Collectors.joining("; "));
      page.element(
          "p", "Readings used: " + (list.isEmpty() ? "none" : list) + ".", "class", "facts");
      return;
    }
    page.open("table").open("thead").open("tr");
    for (String column : List.of("Reading", "Target", "Value", "Meter", "Taken (UTC)", "Kept as")) {
      page.element("th", column);
    }
    page.close().close().open("tbody", "class", "ids");
    for (String id : numbers.ids()) {
      Reading reading = byId.get(id);
      if (reading != null) {
        row(page, numbers.text(List.of(id)), reading);
      }
    }
    page.close().close();
  }

  private void row(Markup page, String number, Reading reading) {
    page.open("tr").element("td", number);
    page.element("td", reading.target().text());
    page.element("td", reading(reading), "class", "number");
    page.element("td", reading.meter());
    page.element("td", time(reading));
    page.element("td", shortId(reading.id())).close();
  }

  private static String time(Reading reading) {
    return reading
        .at()
        .truncatedTo(ChronoUnit.SECONDS)
        .toString()
        .replace('T', ' ')
        .replace("Z", "");
  }

  /** The record's ids end in what tells two readings apart; the whole id would fill the line. */
  private static String shortId(String id) {
    return id.length() <= LONGEST_ID ? id : "…" + id.substring(id.length() - LONGEST_ID);
  }

  private String reading(Reading reading) {
    return switch (reading.target().quantity()) {
      case ATTRIBUTE -> reading.valueSi() == 1 ? "yes" : "no";
      case TILT ->
          LengthDisplay.signed(StrictMath.toDegrees(reading.valueSi()), 3)
              + "°"
              + (reading.face() == 0 ? "" : " face " + reading.face());
      default -> figures.size(reading.valueSi());
    };
  }
}
