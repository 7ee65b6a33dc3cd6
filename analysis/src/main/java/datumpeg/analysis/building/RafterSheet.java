package datumpeg.analysis.building;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The set-out sheet's table of the rafter pairs. */
final class RafterSheet {
  private final SetOut setOut;
  private final LengthDisplay display;
  private final List<SetOutSheet.Row> rows = new ArrayList<>();
  private final List<String> remarks = new ArrayList<>();

  private RafterSheet(SetOut setOut, LengthDisplay display) {
    this.setOut = setOut;
    this.display = display;
  }

  static SetOutSheet.Table of(SetOut setOut, LengthDisplay display) {
    RafterSheet sheet = new RafterSheet(setOut, display);
    OptionalDouble tipDistance = setOut.tipDistanceMetres();
    if (tipDistance.isPresent()) {
      sheet.tips(tipDistance.getAsDouble());
      sheet.apex();
    } else {
      sheet.remarks.add("The plan gives no tip distance: a mono roof has no rafter pairs.");
    }
    return new SetOutSheet.Table(
        "rafters", "Rafter pairs", List.of("length"), sheet.rows, sheet.remarks);
  }

  private void tips(double tipDistanceMetres) {
    rows.add(SetOutSheet.Row.of("tip distance", tipDistanceMetres));
    double shortfall = setOut.bottomCornerShortfallMetres();
    if (setOut.building().sections().rafterEnd() == RafterEnd.PLUMB) {
      remarks.add("The ends are cut plumb: both corners of an end are equally far out.");
      return;
    }
    rows.add(
        SetOutSheet.Row.of("between the bottom corners instead", tipDistanceMetres - shortfall));
    remarks.add(
        "The ends are cut square: the tip is the top corner. Between the bottom corners a tape reads "
            + display.dimension(shortfall)
            + " short (2 · depth · sin pitch).");
  }

  private void apex() {
    OptionalDouble pitch = setOut.pitchFromRafterLengthRadians();
    OptionalDouble length = setOut.building().sections().rafterLengthMetres();
    if (length.isEmpty()) {
      return;
    }
    rows.add(SetOutSheet.Row.of("rafter length", length.getAsDouble()));
    if (pitch.isEmpty()) {
      remarks.add("With this rafter length the pair cannot reach the tip distance.");
      return;
    }
    remarks.add(
        "With this rafter length the pitch is "
            + LengthDisplay.decimal(StrictMath.toDegrees(pitch.getAsDouble()), 2)
            + " deg (the drawing says "
            + LengthDisplay.decimal(StrictMath.toDegrees(setOut.building().pitchRadians()), 2)
            + " deg); for each 1 mm of more tip distance the apex comes down "
            + LengthDisplay.decimal(-SetOut.apexMovePerTipDistance(pitch.getAsDouble()), 2)
            + " mm.");
  }
}
