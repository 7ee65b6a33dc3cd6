package datumpeg.analysis.check.frame;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import datumpeg.analysis.uncertainty.Origin;
import java.util.List;

/**
 * The lean of one column in one direction.
 *
 * @param atColumnHeight metres, known together with the others from the same source
 * @param formStandardUncertainty metres, from the column's own bow, where it is not part of the
 *     above
 */
record Lean(
    GridMark mark,
    Axis axis,
    Linearised atColumnHeight,
    double formStandardUncertainty,
    Source source,
    List<Reading> readings) {

  /** What a lean comes from; leans of one source are known together. */
  enum Source {
    TILT_METER,
    PLUMB_LINE,
    /** All readings of the frames together. */
    FRAMES
  }

  Lean {
    readings = List.copyOf(readings);
  }

  String target() {
    return mark.text() + "/" + axis.text();
  }

  Estimate estimate() {
    return atColumnHeight.estimate().widened(formStandardUncertainty, Origin.FORM);
  }

  /** mine · this + others · other, with what the two share. */
  Estimate combined(double mine, Lean other, double others) {
    Linearised one = atColumnHeight.scaled(mine);
    Linearised two = other.atColumnHeight.scaled(others);
    Estimate sum =
        source == other.source ? one.plus(two).estimate() : one.estimate().plus(two.estimate());
    return sum.widened(Math.abs(mine) * formStandardUncertainty, Origin.FORM)
        .widened(Math.abs(others) * other.formStandardUncertainty, Origin.FORM);
  }
}
