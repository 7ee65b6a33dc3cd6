package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.Wall;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** {@code [openings.ID]}: doors and windows. */
final class OpeningsTable {
  private static final List<String> WALLS = Arrays.stream(Wall.values()).map(Wall::text).toList();

  private OpeningsTable() {}

  /** The openings without mistakes, in the order of the file. */
  static List<Opening> read(Optional<Table> table, Optional<Building> building) {
    List<Opening> openings = new ArrayList<>();
    for (String id : table.map(Table::keys).orElse(List.of())) {
      table
          .flatMap(given -> given.findTable(id))
          .flatMap(given -> opening(id, given, building))
          .ifPresent(openings::add);
    }
    return openings;
  }

  private static Optional<Opening> opening(String id, Table table, Optional<Building> building) {
    Fields fields = new Fields(table);
    if (!id.matches("[A-Za-z0-9_]{1,40}")) {
      table.mistake("'" + id + "' is not a name for an opening; expected letters and digits.");
    }
    Optional<Wall> wall = fields.word(table.require("wall"), WALLS).flatMap(Wall::ofText);
    double from = fields.length("from", Bound.NOT_NEGATIVE);
    double width = width(fields);
    double height = fields.length("height", Bound.POSITIVE);
    fields.end();
    if (!fields.sound() || wall.isEmpty()) {
      return Optional.empty();
    }
    Opening opening = new Opening(id, wall.get(), from, width, height);
    building.ifPresent(given -> checkFits(opening, table, given));
    return Optional.of(opening);
  }

  private static double width(Fields fields) {
    OptionalDouble width = fields.optionalLength("opening_width", Bound.POSITIVE);
    OptionalDouble curtain = fields.optionalLength("curtain_width", Bound.POSITIVE);
    OptionalDouble track = fields.optionalLength("track_width", Bound.NOT_NEGATIVE);
    boolean clear = curtain.isEmpty() && track.isEmpty();
    if (width.isPresent() && clear) {
      return width.getAsDouble();
    }
    if (width.isEmpty() && curtain.isPresent() && track.isPresent()) {
      return curtainWidth(fields, curtain.getAsDouble(), track.getAsDouble());
    }
    if (fields.sound()) {
      fields
          .table()
          .mistake(
              "An opening needs either 'opening_width', or 'curtain_width' and 'track_width'.");
    }
    return Double.NaN;
  }

  private static double curtainWidth(Fields fields, double curtain, double track) {
    double width = Opening.widthForCurtainMetres(curtain, track);
    if (!(width > 0)) {
      fields
          .table()
          .mistake(
              "curtain_width − 2 · track_width is "
                  + Millimetres.text(width)
                  + "; expected more than 0.");
    }
    return width;
  }

  private static void checkFits(Opening opening, Table table, Building building) {
    double wallLength = opening.wall().isEnd() ? building.spanMetres() : building.lengthMetres();
    if (opening.toMetres() > wallLength) {
      table.mistake(
          "The opening "
              + opening.id()
              + " ends "
              + Millimetres.text(opening.toMetres())
              + " along "
              + opening.wall().text()
              + ", which is only "
              + Millimetres.text(wallLength)
              + " long.");
    }
  }
}
