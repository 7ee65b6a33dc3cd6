package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobfile.JobFileException;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class BuildingShapeTest {
  private static final Words WORDS = Words.of(Locale.ROOT);

  static String sample(String job) throws IOException {
    return Files.readString(
        Path.of(System.getProperty("datumpeg.root"), "sample-readings", job, "job.toml"));
  }

  private static BuildingShape shape(String toml) {
    return BuildingShape.of(JobDraft.of(toml));
  }

  /** Two routes: from the texts that are typed, and from the job that is read of them. */
  @Test
  void everythingLiesWhereTheSetOutHasIt() throws IOException {
    for (String job : List.of("larkrise-01", "quarrybend-02")) {
      String toml = sample(job);
      BuildingShape shape = shape(toml);
      SetOut setOut = JobFile.read(toml, job).setOut();
      assertEquals(setOut.columnLineOffsetMetres(), shape.columnLineMetres(), 1e-12);
      assertEquals(setOut.portalFrameNumbers().size(), shape.framesMetres().size());
      for (int number : setOut.portalFrameNumbers()) {
        assertEquals(setOut.portalFrameXMetres(number), shape.framesMetres().get(number - 1), 1e-9);
      }
      assertEquals(
          setOut.roofHeightMetres(setOut.building().spanMetres() / 2),
          shape.ridgeHeightMetres().orElseThrow(),
          1e-12);
      assertEquals(setOut.openings().size(), shape.holes().size());
    }
  }

  @Test
  void whatIsMissingOrMakesNoSenseIsLeftOut() {
    BuildingShape shape =
        shape(
            """
            [building]
            span = "9 m"
            length = "long"
            bays = ["6 m", "?"]
            eave_height = "-3 m"
            roof = "gable"
            pitch = "95 deg"
            [openings.D1]
            wall = "end 1"
            from = "1 m"
            """);
    assertEquals(9, shape.spanMetres().orElseThrow());
    assertTrue(shape.lengthMetres().isEmpty());
    assertTrue(shape.eaveHeightMetres().isEmpty());
    assertTrue(shape.pitchRadians().isEmpty());
    assertEquals(List.of(6.0), shape.baysMetres());
    assertEquals(List.of(), shape.framesMetres());
    assertEquals(List.of(), shape.holes());
  }

  /** However little is typed, and however small the sheet, it is drawn within the sheet. */
  @Test
  void everyStateOfTypingIsDrawnWithinItsSheet() throws IOException {
    String[] lines = sample("larkrise-01").split("\n", -1);
    StringBuilder typed = new StringBuilder();
    for (String line : lines) {
      typed.append(line).append('\n');
      BuildingShape shape;
      try {
        shape = shape(typed.toString());
      } catch (JobFileException e) {
        continue; // in the middle of an array
      }
      for (double width : new double[] {20, 300, 900}) {
        assertWithin(PlanSheet.of(shape, WORDS, "building.span", width, 260), width);
        assertWithin(PortalSheet.of(shape, WORDS, "building.pitch", width, 260), width);
      }
    }
  }

  private static void assertWithin(Picture picture, double width) {
    for (Mark mark : picture.marks()) {
      if (mark instanceof Mark.Words words) {
        double wide = Sheet.wide(words.text());
        double left = words.anchor().left(words.baseline().x(), wide);
        assertTrue(left >= -3 && left + wide <= width + 3, mark.toString());
        assertTrue(words.baseline().y() >= 0 && words.baseline().y() <= 265, mark.toString());
      }
    }
  }

  /** An opening's name must stand at its wall: A at the bottom, end 1 on the left. */
  @Test
  void openingsLieInTheirWalls() {
    String building =
        """
        [building]
        span = "9 m"
        length = "18 m"
        eave_height = "3 m"
        roof = "mono"
        [openings.%s]
        wall = "%s"
        from = "4 m"
        opening_width = "2 m"
        height = "2 m"
        """;
    assertEquals("left", side(String.format(building, "P", "end 1")));
    assertEquals("right", side(String.format(building, "Q", "end n")));
    assertEquals("bottom", side(String.format(building, "R", "side A")));
    assertEquals("top", side(String.format(building, "S", "side B")));
  }

  private static String side(String toml) {
    Picture plan = PlanSheet.of(shape(toml), WORDS, "", 600, 400);
    List<String> sides =
        plan.marks().stream()
            .filter(mark -> mark instanceof Mark.Words words && words.text().matches("[PQRS]"))
            .map(mark -> ((Mark.Words) mark).baseline())
            .map(
                at ->
                    at.x() < 130
                        ? "left"
                        : at.x() > 440 ? "right" : at.y() > 200 ? "bottom" : "top")
            .toList();
    assertEquals(1, sides.size());
    return sides.get(0);
  }

  @Test
  void fieldThatIsTypedIntoIsDrawnHeavily() throws IOException {
    BuildingShape shape = shape(sample("larkrise-01"));
    Picture quiet = PlanSheet.of(shape, WORDS, "", 600, 400);
    Picture lit = PlanSheet.of(shape, WORDS, "building.span", 600, 400);
    assertEquals(0, bold(quiet).size());
    assertEquals(List.of("9000 mm"), bold(lit));
  }

  private static List<String> bold(Picture picture) {
    return picture.marks().stream()
        .filter(mark -> mark instanceof Mark.Words words && words.bold())
        .map(mark -> ((Mark.Words) mark).text())
        .toList();
  }
}
