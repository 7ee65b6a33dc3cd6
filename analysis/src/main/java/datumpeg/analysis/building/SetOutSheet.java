package datumpeg.analysis.building;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The dimensions to carry to the slab, as tables of lengths in metres with remarks in words.
 *
 * @param tables in the order of the work: offsets, line marks, diagonals, rafters, frames,
 *     openings, details
 */
public record SetOutSheet(List<Table> tables) {

  /**
   * One table.
   *
   * @param key names it for programs
   * @param title names it for people
   * @param columns one name a column of lengths
   * @param remarks sentences to read with it
   */
  public record Table(
      String key, String title, List<String> columns, List<Row> rows, List<String> remarks) {
    public Table {
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * One row.
   *
   * @param metres one length a column
   */
  public record Row(String name, List<Double> metres) {
    public Row {
      metres = List.copyOf(metres);
    }

    static Row of(String name, double... metres) {
      List<Double> list = new ArrayList<>();
      for (double length : metres) {
        list.add(length);
      }
      return new Row(name, list);
    }
  }

  public SetOutSheet {
    tables = List.copyOf(tables);
  }

  /**
   * The sheet of a plan.
   *
   * @param display how lengths stand in the remarks; the tables are metres whatever it is
   */
  public static SetOutSheet of(SetOut setOut, LengthDisplay display) {
    List<Table> tables = new ArrayList<>();
    tables.add(offsets(setOut));
    tables.add(lineMarks(setOut));
    tables.add(diagonals(setOut));
    tables.add(RafterSheet.of(setOut, display));
    tables.add(frames(setOut));
    if (!setOut.openings().isEmpty()) {
      tables.add(openings(setOut));
    }
    tables.addAll(DetailSheet.of(setOut));
    return new SetOutSheet(tables);
  }

  private static Table offsets(SetOut setOut) {
    Building building = setOut.building();
    return new Table(
        "offsets",
        "In from the slab's edges, and what is left between",
        List.of("length"),
        List.of(
            Row.of("end edge to end line", building.endLineOffsetMetres()),
            Row.of("side edge to outer column face", building.sections().outerFaceOffsetMetres()),
            Row.of("side edge to column line", setOut.columnLineOffsetMetres()),
            Row.of("clear span", setOut.clearSpanMetres()),
            Row.of("overall length", setOut.overallLengthMetres())),
        List.of(
            "The column line is the inner face of the columns, the end line the outer face of the"
                + " end columns."));
  }

  private static Table lineMarks(SetOut setOut) {
    List<Row> rows = new ArrayList<>();
    for (char letter : new char[] {'A', 'B'}) {
      for (int number : setOut.portalFrameNumbers()) {
        PointName mark = PointName.at("line", new GridMark(letter, number));
        Position position = setOut.position(mark);
        rows.add(Row.of(mark.text(), position.xMetres(), position.yMetres()));
      }
    }
    return new Table(
        "line-marks",
        "Marks of the column lines",
        List.of("along", "across"),
        rows,
        List.of(
            "Along from the slab's end edge 1, across from its side edge A. Marks 1 and "
                + setOut.building().portalFrameCount()
                + " are on the end lines, the others at the centre of their frame."));
  }

  private static Table diagonals(SetOut setOut) {
    List<String> corners = setOut.slab().cornerNames();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      for (int j = i + 2; j < corners.size(); j++) {
        if (i > 0 || j < corners.size() - 1) {
          rows.add(between(setOut, "slab." + corners.get(i), "slab." + corners.get(j)));
        }
      }
    }
    int n = setOut.building().portalFrameCount();
    rows.add(between(setOut, "line.A1", "line.B" + n));
    rows.add(between(setOut, "line.A" + n, "line.B1"));
    return new Table(
        "diagonals",
        "Diagonals",
        List.of("length"),
        rows,
        List.of("Equal diagonals alone do not prove a rectangle: measure the sides too."));
  }

  private static Row between(SetOut setOut, String first, String second) {
    return Row.of(
        first + "-" + second,
        setOut.nominalDistanceMetres(
            PointName.parse(first).orElseThrow(), PointName.parse(second).orElseThrow()));
  }

  private static Table frames(SetOut setOut) {
    List<Row> rows = new ArrayList<>();
    for (int number : setOut.portalFrameNumbers()) {
      rows.add(
          Row.of(
              "frame " + number,
              setOut.portalFrameXMetres(number, Face.LOW),
              setOut.portalFrameXMetres(number, Face.MID),
              setOut.portalFrameXMetres(number, Face.HIGH)));
    }
    return new Table(
        "frames",
        "Running positions of the frames",
        List.of("low face", "centre", "high face"),
        rows,
        List.of(
            "All from the slab's end edge 1: set every frame from there, then small errors do not"
                + " add up. The low face looks toward frame 1."));
  }

  private static Table openings(SetOut setOut) {
    List<Row> rows = new ArrayList<>();
    for (Opening opening : setOut.openings()) {
      rows.add(
          Row.of(
              opening.id() + " in " + opening.wall().text(),
              opening.fromMetres(),
              opening.toMetres(),
              opening.widthMetres(),
              opening.heightMetres()));
    }
    return new Table(
        "openings",
        "Openings",
        List.of("from", "to", "width", "height"),
        rows,
        List.of("Along the wall from the slab's edge at its A end or, for a side, its end 1."));
  }

  /** The first of the sheet's lengths with that table and row, for checks. */
  public OptionalDouble find(String tableKey, String rowName, String column) {
    return tables.stream()
        .filter(table -> table.key().equals(tableKey) && table.columns().contains(column))
        .flatMap(
            table ->
                table.rows().stream()
                    .filter(row -> row.name().equals(rowName))
                    .map(row -> row.metres().get(table.columns().indexOf(column))))
        .mapToDouble(Double::doubleValue)
        .findFirst();
  }
}
