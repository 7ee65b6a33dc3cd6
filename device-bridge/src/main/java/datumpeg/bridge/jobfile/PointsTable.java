package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.PointName;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** {@code [points]}: how well a feature's points are themselves defined. */
final class PointsTable {
  private PointsTable() {}

  /** Standard uncertainties in metres by feature. */
  static Map<String, Double> read(Optional<Table> table) {
    Map<String, Double> definitions = new LinkedHashMap<>();
    if (table.isPresent()) {
      for (String feature : PointName.FEATURES) {
        table
            .get()
            .find(feature)
            .ifPresent(
                value ->
                    Quantities.length(value, Bound.NOT_NEGATIVE)
                        .ifPresent(metres -> definitions.put(feature, metres)));
      }
      table.get().refuseOthers();
    }
    return definitions;
  }
}
