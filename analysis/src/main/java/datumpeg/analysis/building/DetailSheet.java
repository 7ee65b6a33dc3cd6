package datumpeg.analysis.building;

import datumpeg.analysis.building.SetOutSheet.Row;
import datumpeg.analysis.building.SetOutSheet.Table;
import datumpeg.analysis.detail.Anchors;
import datumpeg.analysis.detail.Gutter;
import java.util.ArrayList;
import java.util.List;

/** The tables of what the plan may give besides: anchors, end-wall posts, gutter brackets. */
final class DetailSheet {
  private DetailSheet() {}

  /** Empty where the plan gives none of it. */
  static List<Table> of(SetOut setOut) {
    List<Table> tables = new ArrayList<>();
    setOut.details().anchors().ifPresent(anchors -> tables.add(anchors(setOut, anchors)));
    if (!setOut.details().mullions().isEmpty()) {
      tables.add(mullions(setOut));
    }
    setOut
        .details()
        .gutters()
        .forEach((side, gutter) -> tables.add(brackets(setOut, side, gutter)));
    return tables;
  }

  private static Table anchors(SetOut setOut, Anchors anchors) {
    List<Row> rows = new ArrayList<>();
    for (char letter : new char[] {'A', 'B'}) {
      for (int number : setOut.portalFrameNumbers()) {
        String place = new GridMark(letter, number).text();
        Position centre = setOut.position(new PointName("anchor", place, ""));
        double toEdge =
            letter == 'A' ? centre.yMetres() : setOut.building().spanMetres() - centre.yMetres();
        rows.add(
            Row.of(
                "anchor." + place,
                centre.xMetres(),
                centre.yMetres(),
                toEdge - anchors.acrossMetres() / 2));
      }
    }
    return new Table(
        "anchors",
        "Centres of the anchors, before drilling",
        List.of("along", "across", "outermost to side edge"),
        rows,
        List.of(
            "Along and across as for the line marks. The anchor maker's approval and the engineer's"
                + " drawings decide how near to an edge an anchor may be."));
  }

  private static Table mullions(SetOut setOut) {
    List<Row> rows = new ArrayList<>();
    setOut
        .details()
        .mullions()
        .forEach(
            mullion -> {
              PointName point = new PointName("mullion", mullion.place(), "");
              Position foot = setOut.position(point);
              rows.add(
                  Row.of(
                      point.text(),
                      foot.xMetres(),
                      foot.yMetres(),
                      setOut.mullionHeightMetres(mullion)));
            });
    return new Table(
        "mullions",
        "End-wall posts",
        List.of("along", "across", "height"),
        rows,
        List.of("Along to the outer face of the post, across to its centre, from side edge A."));
  }

  private static Table brackets(SetOut setOut, char side, Gutter gutter) {
    List<Double> places = gutter.bracketsMetres(setOut.building().lengthMetres());
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      double x = places.get(i);
      rows.add(Row.of("bracket " + (i + 1), x, gutter.heightAboveOutletMetres(x)));
    }
    return new Table(
        "gutter-" + side,
        "Brackets of gutter " + side,
        List.of("along", "above outlet"),
        rows,
        List.of(
            "Along from the slab's end edge 1. Heights are above the gutter at its outlet: level that"
                + " bracket first, then a string or the level gives the others."));
  }
}
