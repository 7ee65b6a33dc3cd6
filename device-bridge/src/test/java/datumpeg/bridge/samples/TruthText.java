package datumpeg.bridge.samples;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.simulate.Sighting;
import datumpeg.analysis.simulate.SimulatedColumn;
import datumpeg.analysis.simulate.SimulatedMeter;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What is true of a sample job, as TOML: lengths in millimetres, angles in degrees. */
final class TruthText {
  private final StringBuilder text = new StringBuilder();

  TruthText(String job, Map<String, String> planted) {
    text.append("# Invented. What is true of job ").append(job).append(", whatever was read.\n");
    text.append("# Lengths in mm, angles in degrees. Written by SampleReadings; do not edit.\n\n");
    text.append("[planted]\n");
    planted.forEach((name, what) -> line(name, '"' + what + '"'));
  }

  String text() {
    return text.toString();
  }

  TruthText visit(Visit visit) {
    String name = visit.name();
    table(name + ".shifts", "true position - design position");
    visit.shifts().forEach((point, shift) -> line(quoted(point.text()), shift(shift)));
    columns(name, visit.columns());
    table(name + ".meters", "errors shared by all readings of the visit");
    visit.meters().forEach((id, meter) -> line(id, meter(id, meter)));
    slips(name, visit.slips());
    table(name + ".true_values", "what perfect meters in perfect hands would have shown");
    visit
        .trueValues()
        .forEach(
            (target, value) ->
                line(
                    quoted(target.quantity().text() + " " + target.text()),
                    target.quantity() == MeasuredQuantity.TILT
                        ? number("%.5f", StrictMath.toDegrees(value))
                        : millimetres(value)));
    return this;
  }

  private void columns(String name, Map<GridMark, SimulatedColumn> columns) {
    if (columns.isEmpty()) {
      return;
    }
    table(name + ".columns", "lean at column height, bow at mid-height");
    columns.forEach((mark, column) -> line(mark.text(), column(column)));
  }

  private void slips(String name, List<Sighting> slips) {
    if (slips.isEmpty()) {
      return;
    }
    table(name + ".slips", "what a blunder added to what the meter showed");
    slips.forEach(slip -> line(quoted(slip.target().text()), millimetres(slip.slip())));
  }

  private void table(String name, String meaning) {
    text.append("\n[").append(name).append("] # ").append(meaning).append('\n');
  }

  private void line(String key, String value) {
    text.append(key).append(" = ").append(value).append('\n');
  }

  private static String shift(Position shift) {
    return String.format(
        "{ x = %s, y = %s, z = %s }",
        millimetres(shift.xMetres()), millimetres(shift.yMetres()), millimetres(shift.zMetres()));
  }

  private static String column(SimulatedColumn column) {
    return String.format(
        "{ along = %s, across = %s, bow_along = %s, bow_across = %s }",
        millimetres(column.leanMetres(Axis.ALONG)),
        millimetres(column.leanMetres(Axis.ACROSS)),
        millimetres(column.bowAlongMetres()),
        millimetres(column.bowAcrossMetres()));
  }

  private static String meter(String id, SimulatedMeter meter) {
    String common =
        id.equals("tilt")
            ? number("%.4f", StrictMath.toDegrees(meter.commonError()))
            : millimetres(meter.commonError());
    return "{ common = "
        + common
        + ", plane_along_per_metre = "
        + number("%.4f", meter.plane().risePerMetreAlong() * 1000)
        + ", plane_across_per_metre = "
        + number("%.4f", meter.plane().risePerMetreAcross() * 1000)
        + " }";
  }

  private static String quoted(String key) {
    return '"' + key + '"';
  }

  private static String millimetres(double metres) {
    return number("%.3f", metres * 1000);
  }

  private static String number(String form, double value) {
    String text = String.format(Locale.ROOT, form, value);
    return text.matches("-0\\.0+") ? text.substring(1) : text;
  }
}
