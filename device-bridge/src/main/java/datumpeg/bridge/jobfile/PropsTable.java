package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.PropGeometry;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.Optional;
import java.util.OptionalDouble;

/** {@code [props]}: how the props stand. */
final class PropsTable {
  private PropsTable() {}

  /** The geometry; empty without a table or with mistakes in it. */
  static Optional<PropGeometry> read(Optional<Table> table) {
    if (table.isEmpty()) {
      return Optional.empty();
    }
    Optional<Value> attachment = table.get().require("attachment");
    Optional<Value> angle = table.get().require("angle");
    table.get().refuseOthers();
    if (attachment.isEmpty() || angle.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble height = Quantities.length(attachment.get(), Bound.POSITIVE);
    OptionalDouble slope = Quantities.angle(angle.get(), Bound.POSITIVE);
    if (height.isEmpty() || slope.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new PropGeometry(height.getAsDouble(), slope.getAsDouble()));
    } catch (IllegalArgumentException e) {
      angle.get().mistake(String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }
}
