package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** {@code [job]}: which job, where and whose. */
final class IdentityTable {
  private static final Pattern ID = Pattern.compile("[A-Za-z0-9-]{1,80}");

  private IdentityTable() {}

  static Optional<JobIdentity> read(Table table, Optional<Building> building) {
    Fields fields = new Fields(table);
    String id = id(fields);
    String organisation = organisation(fields);
    String name = fields.text("name");
    String site = fields.text("site");
    String crew = fields.text("crew");
    String slabBy = fields.text("slab_by", "");
    Optional<LocalDate> started = table.find("started").flatMap(Value::date);
    OptionalDouble bearing = fields.optionalAngle("bearing", Bound.ANY);
    OptionalInt erectedFrom = erectedFrom(table, building);
    fields.end();
    return fields.sound()
        ? Optional.of(
            new JobIdentity(
                id, organisation, name, site, crew, slabBy, started, bearing, erectedFrom))
        : Optional.empty();
  }

  private static String id(Fields fields) {
    String id = fields.text("id");
    if (!id.isBlank() && !ID.matcher(id).matches()) {
      fields
          .table()
          .find("id")
          .ifPresent(
              value ->
                  value.mistake(
                      "'job.id' is \"" + id + "\"; expected letters, digits and - only."));
    }
    return id;
  }

  private static String organisation(Fields fields) {
    Optional<Value> value = fields.table().find("organisation");
    return value.isPresent() ? fields.text("organisation") : "local";
  }

  /** The end frame the erection began at: 1 or n. */
  private static OptionalInt erectedFrom(Table table, Optional<Building> building) {
    Optional<Value> value = table.find("erected_from");
    Optional<Long> number = value.flatMap(Value::wholeNumber);
    if (value.isEmpty() || number.isEmpty()) {
      return OptionalInt.empty();
    }
    long last = building.map(Building::portalFrameCount).orElse(Integer.MAX_VALUE);
    boolean isEnd = number.get() == 1 || number.get() == last || building.isEmpty();
    if (!isEnd) {
      value
          .get()
          .mistake(
              "'job.erected_from' is "
                  + number.get()
                  + "; expected an end frame, 1 or "
                  + last
                  + ".");
      return OptionalInt.empty();
    }
    return OptionalInt.of(number.get().intValue());
  }
}
