package datumpeg.analysis.report.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.InventedFindings;
import datumpeg.analysis.report.InventedOutcomes;
import datumpeg.analysis.report.InventedShed;
import datumpeg.analysis.report.PageReading;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

final class DrawingsTest {
  private static final String HEAVY = "2.8";
  private static final String DESIGN = "0.9";
  private final SetOut setOut = InventedShed.job().setOut();
  private final LengthFigures figures = new LengthFigures(LengthDisplay.METRIC);

  private static Document svg(Drawing drawing) {
    return PageReading.parsed(drawing.svg().written());
  }

  @Test
  void deviationsInPlanAreDrawnExactlyAsManyTimesLargerAsTold() {
    Drawing plan = PlanDrawing.of(setOut, InventedFindings.arrival(), figures).orElseThrow();
    assertTrue(plan.caption().contains("100 times larger"));
    Document svg = svg(plan);
    List<double[]> design = PageReading.corners(PageReading.drawn(svg, "polygon", DESIGN).get(0));
    List<double[]> found = PageReading.corners(PageReading.drawn(svg, "polygon", HEAVY).get(0));
    double unitsPerMetre = (design.get(1)[0] - design.get(0)[0]) / 18;
    // B4 lies 13.5 mm toward end n (right) and 1.2 mm toward A (down) of its design.
    assertEquals(100 * 0.0135 * unitsPerMetre, found.get(2)[0] - design.get(2)[0], 0.02);
    assertEquals(100 * 0.0012 * unitsPerMetre, found.get(2)[1] - design.get(2)[1], 0.02);
    assertEquals(0, found.get(0)[0] - design.get(0)[0]);
  }

  @Test
  void sideBLiesAboveSideAAndEndOneOnTheLeft() {
    Drawing plan = PlanDrawing.of(setOut, InventedFindings.arrival(), figures).orElseThrow();
    List<double[]> design =
        PageReading.corners(PageReading.drawn(svg(plan), "polygon", DESIGN).get(0));
    assertTrue(design.get(1)[0] > design.get(0)[0], "A4 is right of A1");
    assertTrue(design.get(3)[1] < design.get(0)[1], "B1 is above A1");
  }

  @Test
  void cornersSayInWordsWhichWayTheyAreOut() {
    String words =
        PageReading.words(
            svg(PlanDrawing.of(setOut, InventedFindings.arrival(), figures).orElseThrow()));
    assertTrue(words.contains("13.5 mm to end n, 1.2 mm to A"), words);
    assertTrue(words.contains("diagonals differ by 11.1 mm ± "), words);
    assertTrue(words.matches("(?s).*A1 to A4: [0-9.]+ mm.*"), words);
    assertTrue(words.contains("of deviation"), words);
  }

  @Test
  void twoCornersGiveNoPlan() {
    StageFindings lift = InventedFindings.lift();
    assertTrue(PlanDrawing.of(setOut, lift, figures).isEmpty());
  }

  @Test
  void theLeaningColumnsArrowPointsToSideBAndStaysInScale() {
    Drawing plumb = PlumbDrawing.of(setOut, InventedFindings.lift(), figures).orElseThrow();
    Document svg = svg(plumb);
    List<double[]> slab = PageReading.corners(PageReading.drawn(svg, "polygon", DESIGN).get(0));
    double unitsPerMetre = (slab.get(1)[0] - slab.get(0)[0]) / 18;
    double factor = Double.parseDouble(plumb.caption().replaceAll(".*drawn (\\d+) times.*", "$1"));
    // The head of A3's arrow is the third: columns come in grid order.
    List<double[]> head = PageReading.corners(PageReading.drawn(svg, "polygon", "1").get(2));
    double footX = slab.get(0)[0] + 12 * unitsPerMetre;
    double footY = slab.get(0)[1] - setOut.columnLineOffsetMetres() * unitsPerMetre;
    assertEquals(footX - 0.0022 * factor * unitsPerMetre, head.get(0)[0], 0.03);
    assertEquals(footY - 0.0141 * factor * unitsPerMetre, head.get(0)[1], 0.03);
  }

  @Test
  void aColumnWithoutLimitsStillGetsItsArrow() {
    StageFindings bare =
        new StageFindings(
            "lift",
            1,
            List.of(
                InventedOutcomes.outcome(
                    "column-plumb",
                    "A1/across",
                    java.util.OptionalDouble.of(0),
                    0.003,
                    0.003,
                    0.001,
                    java.util.Optional.empty(),
                    Double.NaN,
                    null,
                    "",
                    List.of())),
            Map.of(),
            Map.of(),
            List.of(),
            List.of(),
            InventedFindings.lift().answer());
    Document svg = svg(PlumbDrawing.of(setOut, bare, figures).orElseThrow());
    assertEquals(1, PageReading.drawn(svg, "polygon", "1").size());
    assertTrue(PageReading.words(svg).contains("no limit given"));
  }

  @Test
  void barsRunToTheirSideAndAllHaveTheSameScale() {
    List<Drawing> bars =
        BarDrawing.of(
            InventedFindings.lift().outcomes().stream()
                .filter(outcome -> outcome.check().equals("frame-spacing"))
                .toList(),
            figures,
            "Spacings");
    assertEquals(1, bars.size());
    List<Element> rectangles =
        PageReading.elements(svg(bars.get(0)), "rect").stream()
            .filter(rect -> rect.getAttribute("fill").equals("#bbb"))
            .toList();
    assertEquals(6, rectangles.size());
    double longBay = PageReading.number(rectangles.get(1), "width");
    double shortBay = PageReading.number(rectangles.get(2), "width");
    assertEquals(17.8 / 4.2, longBay / shortBay, 0.01);
    double zero = PageReading.number(rectangles.get(1), "x");
    assertEquals(zero, PageReading.number(rectangles.get(2), "x") + shortBay, 0.02);
  }

  @Test
  void manyBarsAreSpreadOverDrawingsThatFitAPage() {
    List<datumpeg.analysis.conform.Outcome> many = new java.util.ArrayList<>();
    for (int i = 0; i < 11; i++) {
      many.addAll(InventedFindings.lift().outcomes().subList(16, 22));
    }
    assertEquals(3, BarDrawing.of(many, figures, "Spacings").size());
    assertTrue(BarDrawing.of(List.of(), figures, "Spacings").isEmpty());
  }

  @Test
  void theHighestAndTheLowestPointAreNamed() {
    Map<String, LevelEstimate> slab = new LinkedHashMap<>(InventedFindings.arrival().levels());
    slab.keySet().removeIf(name -> name.startsWith("seat."));
    String words =
        PageReading.words(svg(LevelDrawing.of(setOut, slab, figures, "Levels").orElseThrow()));
    assertTrue(words.contains("B4 −4.6 LOWEST"), words);
    assertTrue(words.contains("(9.0;4.5) +4.7 HIGHEST"), words);
    assertTrue(LevelDrawing.of(setOut, Map.of(), figures, "Levels").isEmpty());
  }

  @Test
  void oneLevelAloneIsNeitherHighestNorLowest() {
    String words =
        PageReading.words(
            svg(
                LevelDrawing.of(
                        setOut,
                        Map.of("slab.A1", new LevelEstimate(0, 0, 0, 0.001)),
                        figures,
                        "Levels")
                    .orElseThrow()));
    assertFalse(words.contains("HIGHEST"));
    assertFalse(words.contains("LOWEST"));
  }

  @Test
  void theNumberOfEachCauseStandsWhereItShowsItself() {
    Document svg = svg(WhereDrawing.of(setOut, InventedFindings.lift()));
    List<Element> squares =
        PageReading.elements(svg, "rect").stream()
            .filter(rect -> rect.getAttribute("width").equals("18"))
            .toList();
    // Column A3 for cause 1, bays A2 to A3 and B2 to B3 for cause 2.
    assertEquals(3, squares.size());
    List<double[]> slab = PageReading.corners(PageReading.drawn(svg, "polygon", DESIGN).get(0));
    double unitsPerMetre = (slab.get(1)[0] - slab.get(0)[0]) / 18;
    assertEquals(
        slab.get(0)[0] + 12 * unitsPerMetre, PageReading.number(squares.get(0), "x") + 9, 0.02);
    assertEquals(
        slab.get(0)[0] + 9 * unitsPerMetre, PageReading.number(squares.get(1), "x") + 9, 0.02);
  }

  @Test
  void noWordsLeaveTheSidesOfADrawing() {
    for (Drawing drawing :
        List.of(
            PlanDrawing.of(setOut, InventedFindings.arrival(), figures).orElseThrow(),
            PlumbDrawing.of(setOut, InventedFindings.lift(), figures).orElseThrow())) {
      Document svg = svg(drawing);
      for (Element ground : PageReading.elements(svg, "rect")) {
        double x = PageReading.number(ground, "x");
        assertTrue(x >= 0 && x + PageReading.number(ground, "width") <= 720);
      }
    }
  }
}
