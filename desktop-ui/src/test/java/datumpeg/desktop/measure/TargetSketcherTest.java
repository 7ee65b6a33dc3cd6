package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.measure.TargetSketch.Line;
import datumpeg.desktop.measure.TargetSketch.Role;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TargetSketcherTest {
  private static final Words WORDS = Words.of(Locale.ROOT);
  private final SetOut setOut = InventedJobs.reduced().job().setOut();

  private TargetSketch sketch(MeasuredQuantity quantity, String target) {
    return new TargetSketcher(setOut, WORDS).sketch(Target.parse(quantity, target), List.of());
  }

  private static List<Line> lit(TargetSketch sketch) {
    return sketch.lines().stream().filter(line -> line.role() == Role.LIT).toList();
  }

  @Test
  void aDiagonalOfTheSlabIsLitOnThePlan() {
    TargetSketch sketch =
        sketch(MeasuredQuantity.DISTANCE, "slab.A1-slab.B" + setOut.building().portalFrameCount());
    assertEquals("Slab from above, side A below", sketch.view());
    Line line = lit(sketch).get(0);
    assertEquals(setOut.building().lengthMetres(), Math.abs(line.toX() - line.fromX()), 1e-9);
    assertEquals(setOut.building().spanMetres(), Math.abs(line.toY() - line.fromY()), 1e-9);
  }

  @Test
  void aColumnAcrossIsLitInItsPortalFrameAndAlongInItsWall() {
    double height = setOut.building().columnHeightMetres();
    TargetSketch across = sketch(MeasuredQuantity.TILT, "column.B2/across");
    assertEquals("Portal frame 2 from outside end 1", across.view());
    // From outside end 1, A is on the right hand and B on the left, as the set-out sheet says.
    assertEquals(setOut.columnLineOffsetMetres(), lit(across).get(0).fromX(), 1e-9);
    TargetSketch along = sketch(MeasuredQuantity.TILT, "column.A2/along");
    assertEquals("Wall frame A from outside side A", along.view());
    assertEquals(setOut.portalFrameXMetres(2), lit(along).get(0).fromX(), 1e-9);
    assertEquals(height, lit(along).get(0).toY(), 1e-9);
  }

  @Test
  void whatIsStillOpenIsDrawnInTheSameViewOnly() {
    List<Target> open =
        List.of(
            Target.parse(MeasuredQuantity.DISTANCE, "slab.A1-slab.B1"),
            Target.parse(MeasuredQuantity.TILT, "column.A2/along"));
    TargetSketch sketch =
        new TargetSketcher(setOut, WORDS)
            .sketch(Target.parse(MeasuredQuantity.HEIGHT, "slab.A1"), open);
    assertEquals(1, sketch.lines().stream().filter(line -> line.role() == Role.OPEN).count());
  }

  @Test
  void everyTargetOfEveryStageIsLitAndHasAnInstructionInWords() {
    WantedWords words = new WantedWords(WORDS, Map.of());
    for (Stage stage : Stage.STANDARD) {
      for (Wanted wanted : Wanted.of(MeasuringList.of(setOut, stage))) {
        TargetSketch sketch = new TargetSketcher(setOut, WORDS).sketch(wanted.target(), List.of());
        assertTrue(
            sketch.dots().stream().anyMatch(dot -> dot.role() == Role.LIT),
            () -> wanted.target().text() + " is not lit");
        String instruction = words.instruction(wanted);
        assertTrue(
            wanted.target().points().stream().map(PointName::place).allMatch(instruction::contains),
            instruction);
      }
    }
  }

  @Test
  void aPointThePlanDoesNotHaveIsNamedAndNotDrawn() {
    TargetSketch sketch = sketch(MeasuredQuantity.HEIGHT, "slab.Z9");
    assertTrue(sketch.dots().stream().noneMatch(dot -> dot.role() == Role.LIT));
    assertTrue(sketch.spoken().contains("slab corner Z9"), sketch.spoken());
  }
}
