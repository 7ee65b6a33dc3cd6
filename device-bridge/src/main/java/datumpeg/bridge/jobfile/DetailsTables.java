package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.detail.Anchors;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.detail.Gutter;
import datumpeg.analysis.detail.Mullion;
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

/** {@code [mullions]}, {@code [anchors]}, {@code [gutters.A]} and {@code [flatness]}. */
final class DetailsTables {
  private final Optional<Building> building;

  private DetailsTables(Optional<Building> building) {
    this.building = building;
  }

  /** The details without mistakes. */
  static Details read(Table document, Optional<Building> building) {
    DetailsTables tables = new DetailsTables(building);
    Details details =
        Details.NONE
            .withMullions(document.findTable("mullions").map(tables::mullions).orElse(List.of()))
            .withGutters(document.findTable("gutters").map(tables::gutters).orElse(Map.of()));
    Optional<Anchors> anchors = document.findTable("anchors").flatMap(DetailsTables::anchors);
    details = anchors.isPresent() ? details.withAnchors(anchors.get()) : details;
    var flatness = document.findTable("flatness").flatMap(FlatnessTable::read);
    return flatness.isPresent() ? details.withFlatness(flatness.get()) : details;
  }

  private List<Mullion> mullions(Table table) {
    Fields fields = new Fields(table);
    List<Mullion> mullions = new ArrayList<>();
    OptionalDouble height = fields.optionalLength("height", Bound.POSITIVE);
    int n = building.map(Building::portalFrameCount).orElse(2);
    table.find("end_1").ifPresent(value -> mullions.addAll(ofEnd(value, 1, height)));
    table.find("end_n").ifPresent(value -> mullions.addAll(ofEnd(value, n, height)));
    fields.end();
    return mullions;
  }

  private List<Mullion> ofEnd(Value value, int portalFrame, OptionalDouble height) {
    List<Double> places = Quantities.lengths(value, Bound.POSITIVE);
    List<Mullion> mullions = new ArrayList<>();
    double before = 0;
    for (double place : places) {
      double span = building.map(Building::spanMetres).orElse(Double.POSITIVE_INFINITY);
      if (place <= before || place >= span) {
        value.mistake(
            "'"
                + value.name()
                + "' has a mullion "
                + Millimetres.text(place)
                + " from side A; expected ascending places between 0 and the span.");
        return List.of();
      }
      before = place;
      mullions.add(new Mullion(portalFrame, "M" + (mullions.size() + 1), place, height));
    }
    return mullions;
  }

  private static Optional<Anchors> anchors(Table table) {
    Fields fields = new Fields(table);
    double edge = fields.length("edge_distance", Bound.POSITIVE);
    double across = fields.length("across", Bound.NOT_NEGATIVE, 0);
    double along = fields.length("along", Bound.NOT_NEGATIVE, 0);
    fields.end();
    return fields.sound() ? Optional.of(new Anchors(edge, across, along)) : Optional.empty();
  }

  private Map<Character, Gutter> gutters(Table table) {
    Map<Character, Gutter> gutters = new LinkedHashMap<>();
    for (char side : new char[] {'A', 'B'}) {
      table
          .findTable(Character.toString(side))
          .flatMap(this::gutter)
          .ifPresent(gutter -> gutters.put(side, gutter));
    }
    table.refuseOthers();
    return gutters;
  }

  private Optional<Gutter> gutter(Table table) {
    Fields fields = new Fields(table);
    double outlet = fields.length("outlet", Bound.NOT_NEGATIVE);
    double fall = StrictMath.tan(fields.angle("fall", Bound.NOT_NEGATIVE));
    double spacing =
        fields.length("bracket_spacing", Bound.POSITIVE, Gutter.USUAL_BRACKET_SPACING_METRES);
    fields.end();
    double length = building.map(Building::lengthMetres).orElse(Double.POSITIVE_INFINITY);
    if (outlet > length) {
      table
          .find("outlet")
          .ifPresent(
              value ->
                  value.mistake(
                      "'"
                          + value.name()
                          + "' is "
                          + Millimetres.text(outlet)
                          + " from end 1; the building is "
                          + Millimetres.text(length)
                          + " long."));
    }
    return fields.sound() ? Optional.of(new Gutter(outlet, fall, spacing)) : Optional.empty();
  }
}
