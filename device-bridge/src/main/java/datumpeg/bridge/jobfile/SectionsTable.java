package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Girts;
import datumpeg.analysis.building.RafterEnd;
import datumpeg.analysis.building.Sections;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Table;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * {@code [sections]}: the sizes of the steel.
 *
 * @param columnHeightMetres the height the plumb limit is a ratio of, if it is given
 */
record SectionsTable(Sections sections, OptionalDouble columnHeightMetres) {

  static Optional<SectionsTable> read(Table table) {
    Fields fields = new Fields(table);
    Sections sections =
        new Sections(
            fields.length("column_depth", Bound.POSITIVE),
            fields.length("column_width", Bound.POSITIVE),
            fields.length("side_girt_depth", Bound.NOT_NEGATIVE),
            fields.length("end_girt_depth", Bound.NOT_NEGATIVE),
            fields.length("rafter_depth", Bound.POSITIVE),
            girts(fields),
            fields.length("edge_to_girt_face", Bound.NOT_NEGATIVE, 0),
            fields.length("knee_gap", Bound.NOT_NEGATIVE, 0),
            rafterEnd(fields),
            fields.optionalLength("rafter_length", Bound.POSITIVE),
            fields.optionalLength("tip_distance", Bound.POSITIVE),
            fields.optionalLength("cladding_thickness", Bound.NOT_NEGATIVE),
            fields.optionalLength("sheet_cover", Bound.POSITIVE),
            fields.optionalLength("column_straightness", Bound.NOT_NEGATIVE));
    OptionalDouble columnHeight = fields.optionalLength("column_height", Bound.POSITIVE);
    fields.end();
    return fields.sound()
        ? Optional.of(new SectionsTable(sections, columnHeight))
        : Optional.empty();
  }

  private static Girts girts(Fields fields) {
    return fields
        .word(fields.table().find("girts"), List.of("outside", "between"))
        .filter("between"::equals)
        .map(word -> Girts.BETWEEN)
        .orElse(Girts.OUTSIDE);
  }

  private static RafterEnd rafterEnd(Fields fields) {
    return fields
        .word(fields.table().find("rafter_end"), List.of("square", "plumb"))
        .filter("plumb"::equals)
        .map(word -> RafterEnd.PLUMB)
        .orElse(RafterEnd.SQUARE);
  }
}
