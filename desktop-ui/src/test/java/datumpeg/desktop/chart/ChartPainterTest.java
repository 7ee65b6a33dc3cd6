package datumpeg.desktop.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.control.Palette;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;

/** What is drawn, read from the SVG picture: no toolkit is needed. */
class ChartPainterTest {
  private static final ChartLabels LABELS =
      new ChartLabels(
          "mm", "control limit", "centre line", "permitted", i -> "day " + i, i -> "point " + i);

  private static String picture(ChartPoints points, ChartWindow window) {
    SvgPen pen = new SvgPen(900, 500, Palette.light());
    new ChartPainter(points, window, LABELS, -1, pen).paint();
    return pen.picture("Plumb <of> columns & posts");
  }

  private static long count(String picture, String pattern) {
    return Pattern.compile(pattern).matcher(picture).results().count();
  }

  private static ChartPoints.Builder waves(int size) {
    return ChartPoints.of(size, i -> 5 * Math.sin(i * 0.7));
  }

  @Test
  void fewPointsAreDrawnSinglyWithTheirBarsAndMarks() {
    ChartPoints points =
        waves(12)
            .bars(i -> 2)
            .marks(i -> i == 3 ? Mark.BEYOND : i == 5 ? Mark.IN_A_RUN : Mark.PLAIN)
            .build();
    String picture = picture(points, ChartWindow.all(12));
    assertEquals(10, count(picture, "<circle"));
    assertEquals(1, count(picture, "<polygon"));
    assertEquals(1, count(picture, "fill=\"#ffffff\" stroke="));
  }

  /** However many points: at most one block for each column of pixels. */
  @Test
  void manyPointsAreDrawnByColumnsOfPixels() {
    String picture = picture(waves(100_000).build(), ChartWindow.all(100_000));
    assertTrue(count(picture, "<rect") < 900, "blocks: " + count(picture, "<rect"));
    assertEquals(0, count(picture, "<circle"));
    assertTrue(picture.length() < 200_000, "length " + picture.length());
  }

  /** One point of a hundred thousand sticks out, and is seen. */
  @Test
  void noPointThatSticksOutIsLost() {
    ChartPoints points =
        ChartPoints.of(100_000, i -> i == 61_803 ? 40 : 0)
            .marks(i -> i == 61_803 ? Mark.BEYOND : Mark.PLAIN)
            .build();
    String picture = picture(points, ChartWindow.all(100_000));
    assertEquals(1, count(picture, "<polygon"));
    assertTrue(count(picture, "height=\"(3[0-9]{2})\\.") >= 1, "a block as high as the plot");
  }

  @Test
  void controlLimitsAreSolidAndPermittedDeviationsDashedEachNamed() {
    ChartPoints points = waves(30).control(1, i -> -7, i -> 9).permitted(i -> -12, i -> 12).build();
    String picture = picture(points, ChartWindow.all(30));
    assertEquals(2, count(picture, "stroke-dasharray"));
    assertTrue(picture.contains("control limit +9.0"), picture);
    assertTrue(picture.contains("permitted −12.0"), picture);
    assertTrue(picture.contains("centre line +1.0"), picture);
  }

  /** 0.315 in is 8 mm; with one decimal it would read as 7.6 mm. */
  @Test
  void linesInInchesHaveTwoDecimals() {
    ChartPoints points = waves(30).permitted(i -> -0.315, i -> 0.315).build();
    ChartLabels inches =
        new ChartLabels("in", "control limit", "centre", "permitted", i -> "", i -> "");
    SvgPen pen = new SvgPen(900, 500, Palette.light());
    new ChartPainter(points, ChartWindow.all(30), inches, -1, pen).paint();
    assertTrue(pen.picture("in inches").contains("permitted +0.32"), "two decimals");
  }

  @Test
  void pointsAreCountedInRoundNumbers() {
    String picture = picture(waves(80).build(), ChartWindow.all(80));
    assertTrue(picture.contains(">20<") && picture.contains(">80<"), picture);
    assertFalse(picture.contains(">6<"), picture);
  }

  @Test
  void limitThatStepsIsDrawnInPieces() {
    ChartPoints points = waves(30).permitted(i -> Double.NaN, i -> i < 10 ? 8 : 12).build();
    assertEquals(2, count(picture(points, ChartWindow.all(30)), "stroke-dasharray"));
  }

  @Test
  void pictureIsXmlWithItsTitle() throws Exception {
    String picture = picture(waves(5).build(), ChartWindow.all(5));
    String title =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(picture.getBytes(StandardCharsets.UTF_8)))
            .getElementsByTagName("title")
            .item(0)
            .getTextContent();
    assertEquals("Plumb <of> columns & posts", title);
  }

  @Test
  void noPointsOneAndEqualOnesAreDrawnWithoutHarm() {
    assertFalse(picture(waves(0).build(), ChartWindow.all(0)).contains("<line"));
    assertEquals(1, count(picture(waves(1).build(), ChartWindow.all(1)), "<circle"));
    ChartPoints equal = ChartPoints.of(3, i -> 4).control(4, i -> 4, i -> 4).build();
    assertEquals(3, count(picture(equal, ChartWindow.all(3)), "<circle"));
  }
}
