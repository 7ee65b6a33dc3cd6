package datumpeg.desktop.findings;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.drawing.Drawing;
import datumpeg.analysis.report.drawing.StageDrawings;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.List;

/** What the drawings of a stage are made of. Immutable. */
record StageToDraw(SetOut setOut, StageFindings findings, LengthFigures lengths) {

  /** Takes a while: not for the JavaFX thread. */
  List<Drawing> drawings() {
    return StageDrawings.of(setOut, findings, lengths);
  }

  /** Whether the other is of the same stage of the same building, perhaps measured further. */
  boolean isOfTheStageOf(StageToDraw other) {
    return findings.stage().equals(other.findings.stage()) && setOut.equals(other.setOut);
  }
}
