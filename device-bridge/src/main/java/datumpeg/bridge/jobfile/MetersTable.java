package datumpeg.bridge.jobfile;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** {@code [meters.ID]}: instruments and how accurate one reading of them is. */
public final class MetersTable {
  private static final List<String> QUANTITIES =
      Arrays.stream(MeasuredQuantity.values())
          .filter(quantity -> quantity != MeasuredQuantity.ATTRIBUTE)
          .map(MeasuredQuantity::text)
          .toList();

  private MetersTable() {}

  /** The meters without mistakes, in the order of the file. */
  static Map<String, Meter> read(Optional<Table> table) {
    Map<String, Meter> meters = new LinkedHashMap<>();
    for (String id : table.map(Table::keys).orElse(List.of())) {
      table
          .flatMap(given -> given.findTable(id))
          .flatMap(given -> meter(id, given, TolerancesTable.JOB_FILE))
          .ifPresent(meter -> meters.put(id, meter));
    }
    return meters;
  }

  /**
   * One instrument; a meter profile describes its own by the same keys. Empty, and mistakes added,
   * if anything is wrong.
   *
   * @param stated where the accuracy comes from
   */
  public static Optional<Meter> meter(String id, Table table, String stated) {
    Fields fields = new Fields(table);
    Optional<MeasuredQuantity> quantity =
        fields.word(table.require("quantity"), QUANTITIES).flatMap(MeasuredQuantity::ofText);
    Dimension dimension = quantity.map(MeasuredQuantity::dimension).orElse(Dimension.LENGTH);
    Parts parts =
        new Parts(
            part(fields, "expanded_uncertainty", dimension),
            coverage(table),
            part(fields, "repeatability", dimension),
            part(fields, "common", dimension),
            perMetre(table),
            part(fields, "resolution", dimension));
    OptionalDouble edge = fields.optionalLength("edge", Bound.POSITIVE);
    if (edge.isPresent() && dimension == Dimension.ANGLE) {
      table
          .find("edge")
          .ifPresent(
              value -> value.mistake("'" + value.name() + "' belongs to meters of lengths."));
    }
    if (quantity.isPresent()) {
      check(table, parts, dimension);
    }
    fields.end();
    return fields.sound() && quantity.isPresent()
        ? Optional.of(new Meter(id, quantity.get(), parts.accuracy(), edge, stated))
        : Optional.empty();
  }

  private static OptionalDouble part(Fields fields, String key, Dimension dimension) {
    return dimension == Dimension.ANGLE
        ? fields.optionalAngle(key, Bound.NOT_NEGATIVE)
        : fields.optionalLength(key, Bound.NOT_NEGATIVE);
  }

  private static OptionalDouble coverage(Table table) {
    Optional<Value> value = table.find("coverage");
    Optional<Double> number = value.flatMap(Value::number);
    if (value.isPresent() && number.isPresent() && !(number.get() > 0)) {
      value.get().mistake("'" + value.get().name() + "' is not more than 0; usual are 2 and 3.");
    }
    return number.isPresent() ? OptionalDouble.of(number.get()) : OptionalDouble.empty();
  }

  /**
   * Metres for each metre, written as a slope, {@code "0.05 mm/m"}, or a length, {@code "0.05 mm"}.
   */
  private static OptionalDouble perMetre(Table table) {
    Optional<Value> value = table.find("per_metre");
    if (value.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (value.get().isText() && !value.get().text().orElse("").contains("/")) {
      return Quantities.length(value.get(), Bound.NOT_NEGATIVE);
    }
    OptionalDouble slope = Quantities.angle(value.get(), Bound.NOT_NEGATIVE);
    return slope.isPresent() ? OptionalDouble.of(StrictMath.tan(slope.getAsDouble())) : slope;
  }

  private static void check(Table table, Parts parts, Dimension dimension) {
    boolean finer = parts.repeatability.isPresent() && parts.common.isPresent();
    if (parts.expanded.isPresent() && finer) {
      table.mistake(
          "The meter has expanded_uncertainty, repeatability and common; two of them say it all:"
              + " leave one out.");
    } else if (parts.expanded.isEmpty() && !finer) {
      table.mistake(
          "The meter has no accuracy; expected expanded_uncertainty, or repeatability and common.");
    } else if (!(parts.restVariance() >= 0)) {
      table.mistake(
          "repeatability or common is more than the whole standard uncertainty,"
              + " expanded_uncertainty / coverage.");
    }
    if (parts.coverage.isPresent() && parts.expanded.isEmpty()) {
      table.mistake("coverage belongs to expanded_uncertainty, which is missing.");
    }
    if (parts.perMetre.orElse(0) > 0 && dimension == Dimension.ANGLE) {
      table.mistake("per_metre belongs to meters of lengths; this one measures an angle.");
    }
  }

  /** The accuracy as written; each part may be absent. */
  private record Parts(
      OptionalDouble expanded,
      OptionalDouble coverage,
      OptionalDouble repeatability,
      OptionalDouble common,
      OptionalDouble perMetre,
      OptionalDouble resolution) {

    private double wholeVariance() {
      double standard = expanded.orElse(Double.NaN) / coverage.orElse(2);
      return standard * standard;
    }

    /** What the stated part leaves of the whole variance; 0 when nothing is split. */
    private double restVariance() {
      double stated = repeatability.orElse(common.orElse(0));
      return expanded.isPresent() ? wholeVariance() - stated * stated : 0;
    }

    private MeterAccuracy accuracy() {
      boolean split = expanded.isPresent() && repeatability.isEmpty() && common.isEmpty();
      double rest = Math.sqrt(split ? wholeVariance() / 2 : restVariance());
      return new MeterAccuracy(
          repeatability.orElse(rest),
          common.orElse(rest),
          perMetre.orElse(0),
          resolution.orElse(0));
    }
  }
}
