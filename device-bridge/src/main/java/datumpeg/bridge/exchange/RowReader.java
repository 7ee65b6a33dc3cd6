package datumpeg.bridge.exchange;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.PlanFit;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.bridge.jobs.ReadingValue;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.mistake.Place;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Checks rows against the job's plan and turns them into readings. One thread. */
final class RowReader {
  private final Job job;
  private final List<MovedThing> moved;
  private final OffsetDateTime now;
  private final TimeOrderedIds ids;
  private final String file;
  private final Mistakes mistakes;

  RowReader(
      Job job,
      List<MovedThing> moved,
      OffsetDateTime now,
      TimeOrderedIds ids,
      String file,
      Mistakes mistakes) {
    this.job = job;
    this.moved = List.copyOf(moved);
    this.now = now;
    this.ids = ids;
    this.file = file;
    this.mistakes = mistakes;
  }

  /** The row's reading; empty, and a mistake added for each bad field, if it has none. */
  Optional<ReadingEntry> read(TableRow row) {
    int before = mistakes.count();
    Optional<Stage> stage = stage(row);
    Optional<MeasuredQuantity> quantity = quantity(row);
    Optional<Target> target = quantity.flatMap(known -> target(row, known));
    stage.ifPresent(known -> target.ifPresent(named -> checkPlan(row, known, named)));
    OptionalDouble value = quantity.map(known -> value(row, known)).orElse(OptionalDouble.empty());
    int face = face(row, quantity);
    quantity.ifPresent(known -> checkUp(row, known));
    quantity.ifPresent(known -> checkMeter(row, known));
    Optional<OffsetDateTime> at = at(row);
    int round = round(row, target);
    if (mistakes.count() > before
        || stage.isEmpty()
        || target.isEmpty()
        || value.isEmpty()
        || at.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        ReadingEntry.builder(
                ids.next(), stage.get().id(), target.get().quantity().text(), target.get().text())
            .value(row.text(Column.VALUE), row.text(Column.UNIT), value.getAsDouble())
            .face(face)
            .meter(row.text(Column.METER), row.text(Column.SETUP), row.text(Column.UP))
            .round(round)
            .readAt(at.get())
            .operator(row.text(Column.OPERATOR))
            .note(row.text(Column.NOTE))
            .source("enter " + file + " line " + row.line())
            .build());
  }

  private Optional<Stage> stage(TableRow row) {
    String text = row.text(Column.STAGE);
    Optional<Stage> stage = job.stage(text);
    if (stage.isEmpty()) {
      List<String> known = job.stages().stream().map(Stage::id).toList();
      mistake(row, Column.STAGE, "is no stage of the job; " + Nearest.hint(text, known));
    }
    return stage;
  }

  private Optional<MeasuredQuantity> quantity(TableRow row) {
    String text = row.text(Column.QUANTITY);
    Optional<MeasuredQuantity> quantity = MeasuredQuantity.ofText(text);
    if (quantity.isEmpty()) {
      mistake(
          row, Column.QUANTITY, "is no quantity; " + Nearest.hint(text, MeasuredQuantity.texts()));
    }
    return quantity;
  }

  private Optional<Target> target(TableRow row, MeasuredQuantity quantity) {
    try {
      return Optional.of(Target.parse(quantity, row.text(Column.TARGET)));
    } catch (IllegalArgumentException e) {
      mistake(row, Column.TARGET, e);
      return Optional.empty();
    }
  }

  private void checkPlan(TableRow row, Stage stage, Target target) {
    PlanFit.misfit(job, stage, target)
        .ifPresent(why -> mistakes.add(place(row), column(Column.TARGET) + ": " + why));
  }

  private OptionalDouble value(TableRow row, MeasuredQuantity quantity) {
    try {
      double si = ReadingValue.si(quantity, row.text(Column.VALUE), row.text(Column.UNIT));
      if (quantity == MeasuredQuantity.DISTANCE && !(si > 0)) {
        mistake(row, Column.VALUE, "is not more than 0, which a distance must be");
      }
      if (quantity == MeasuredQuantity.TILT && Math.abs(si) >= StrictMath.PI / 2) {
        mistake(row, Column.VALUE, "is 90 deg or more from vertical; expected less");
      }
      return OptionalDouble.of(si);
    } catch (IllegalArgumentException e) {
      mistake(row, Column.VALUE, e);
      return OptionalDouble.empty();
    }
  }

  private int face(TableRow row, Optional<MeasuredQuantity> quantity) {
    String text = row.text(Column.FACE);
    if (text.isEmpty()) {
      return 0;
    }
    if (!text.equals("1") && !text.equals("2")) {
      mistake(row, Column.FACE, "is no face of a meter; expected 1, 2 or nothing");
      return 0;
    }
    if (quantity.isPresent() && quantity.get() != MeasuredQuantity.TILT) {
      mistake(row, Column.FACE, "belongs to a tilt; expected nothing for other quantities");
    }
    return Integer.parseInt(text);
  }

  private void checkUp(TableRow row, MeasuredQuantity quantity) {
    String text = row.text(Column.UP);
    if (text.isEmpty()) {
      return;
    }
    if (quantity != MeasuredQuantity.TILT) {
      mistake(row, Column.UP, "belongs to a tilt; expected nothing for other quantities");
      return;
    }
    try {
      double metres = Quantity.lengthMetres(text);
      double height = job.setOut().building().columnHeightMetres();
      if (!(metres >= 0 && metres <= height)) {
        mistake(
            row,
            Column.UP,
            "is not on the column; expected from 0 mm to " + height * 1000 + " mm above its base");
      }
    } catch (IllegalArgumentException e) {
      mistake(row, Column.UP, e);
    }
  }

  private void checkMeter(TableRow row, MeasuredQuantity quantity) {
    Meter meter = job.meters().get(row.text(Column.METER));
    if (meter != null && meter.quantity().dimension() != quantity.dimension()) {
      mistake(
          row,
          Column.METER,
          "measures " + meter.quantity().text() + ", which cannot give a " + quantity.text());
    }
  }

  private Optional<OffsetDateTime> at(TableRow row) {
    String text = row.text(Column.AT);
    if (text.isEmpty()) {
      return Optional.of(now);
    }
    try {
      return Optional.of(OffsetDateTime.parse(text));
    } catch (DateTimeParseException e) {
      mistake(
          row,
          Column.AT,
          "is no time of ISO 8601 with an offset; expected such as 2026-03-02T08:15:30+01:00");
      return Optional.empty();
    }
  }

  private int round(TableRow row, Optional<Target> target) {
    String text = row.text(Column.ROUND);
    if (text.isEmpty()) {
      return target.map(named -> MovedThing.roundOf(named, moved)).orElse(1);
    }
    if (!text.matches("[1-9]\\d{0,3}")) {
      mistake(row, Column.ROUND, "is no round; expected a whole number from 1, or nothing");
      return 1;
    }
    return Integer.parseInt(text);
  }

  private void mistake(TableRow row, Column column, String rest) {
    mistakes.add(place(row), column(column) + ": '" + row.text(column) + "' " + rest + ".");
  }

  private void mistake(TableRow row, Column column, IllegalArgumentException failure) {
    mistakes.add(place(row), column(column) + ": " + failure.getMessage());
  }

  private static String column(Column column) {
    return "Column '" + column.text() + "'";
  }

  private Place place(TableRow row) {
    return new Place(file, row.line(), 0);
  }
}
