package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.building.UnknownPointException;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** {@code [slab]}: outline, points to be levelled, packing plates. */
final class SlabTable {
  private static final Pattern CORNER = Pattern.compile("[A-Za-z0-9_]{1,40}");
  private static final List<String> LEVELLED = List.of("slab", "seat");

  private final Fields fields;
  private final Building building;

  private SlabTable(Fields fields, Building building) {
    this.fields = fields;
    this.building = building;
  }

  /** The slab; without a table the rectangle of span and length. Empty without a building. */
  static Optional<Slab> read(Optional<Table> table, Optional<Building> building) {
    if (building.isEmpty()) {
      return Optional.empty();
    }
    if (table.isEmpty()) {
      return Optional.of(new Slab(Slab.rectangle(building.get()), List.of(), List.of()));
    }
    return new SlabTable(new Fields(table.get()), building.get()).read();
  }

  private Optional<Slab> read() {
    Table table = fields.table();
    Optional<Value> cornersValue = table.find("corners");
    Map<String, PlanPoint> corners =
        cornersValue.map(this::corners).orElseGet(() -> Slab.rectangle(building));
    List<Value> points = table.find("level_points").flatMap(Value::list).orElse(List.of());
    List<Double> plates =
        table.find("plates").map(v -> Quantities.lengths(v, Bound.POSITIVE)).orElse(List.of());
    fields.end();
    if (!fields.sound()) {
      return Optional.empty();
    }
    try {
      Slab outline = new Slab(corners, List.of(), plates);
      List<PointName> levelPoints = levelPoints(points, outline);
      return fields.sound()
          ? Optional.of(new Slab(corners, levelPoints, plates))
          : Optional.empty();
    } catch (IllegalArgumentException e) {
      table.mistakes().add(cornersValue.map(Value::place).orElse(table.place()), text(e));
      return Optional.empty();
    }
  }

  private Map<String, PlanPoint> corners(Value value) {
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    Optional<Table> table = value.table();
    for (String name : table.map(Table::keys).orElse(List.of())) {
      Optional<Value> place = table.flatMap(given -> given.find(name));
      if (!CORNER.matcher(name).matches()) {
        place.ifPresent(
            given ->
                given.mistake(
                    "'" + name + "' is not a name for a corner; expected letters and digits."));
      }
      place.flatMap(SlabTable::point).ifPresent(point -> corners.put(name, point));
    }
    return corners;
  }

  private static Optional<PlanPoint> point(Value value) {
    Optional<List<Value>> items = value.list();
    if (items.isPresent() && items.get().size() != 2) {
      value.mistake(
          "'"
              + value.name()
              + "' has "
              + items.get().size()
              + " coordinates; expected two lengths, x along and y across.");
      return Optional.empty();
    }
    List<OptionalDouble> metres = new ArrayList<>();
    items.orElse(List.of()).forEach(item -> metres.add(Quantities.length(item, Bound.ANY)));
    return metres.size() == 2 && metres.stream().allMatch(OptionalDouble::isPresent)
        ? Optional.of(new PlanPoint(metres.get(0).getAsDouble(), metres.get(1).getAsDouble()))
        : Optional.empty();
  }

  private List<PointName> levelPoints(List<Value> values, Slab outline) {
    SetOut setOut = new SetOut(building, outline, List.of());
    List<PointName> points = new ArrayList<>();
    for (Value value : values) {
      Optional<PointName> point = value.text().flatMap(text -> levelPoint(value, text, setOut));
      if (point.isPresent() && points.contains(point.get())) {
        value.mistake(point.get().text() + " is there twice.");
      }
      point.ifPresent(points::add);
    }
    return points;
  }

  private static Optional<PointName> levelPoint(Value value, String text, SetOut setOut) {
    Optional<PointName> point =
        PointName.parse(text).filter(name -> LEVELLED.contains(name.feature()));
    if (point.isEmpty()) {
      value.mistake(
          "'"
              + text
              + "' is not a point to be levelled; expected such as slab.A1, slab.@(9.0;4.5) or"
              + " seat.A2.");
      return point;
    }
    try {
      PlanPoint place = setOut.position(point.get()).plan();
      if (!setOut.slab().covers(place)) {
        value.mistake(text + " lies beside the slab's outline.");
      }
    } catch (UnknownPointException e) {
      value.mistake(text(e));
    }
    return point;
  }

  private static String text(IllegalArgumentException failure) {
    return String.valueOf(failure.getMessage());
  }
}
