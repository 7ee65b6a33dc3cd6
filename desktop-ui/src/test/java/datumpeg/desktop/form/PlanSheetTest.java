package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.report.drawing.Box;
import datumpeg.analysis.report.drawing.Ink;
import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.analysis.report.drawing.Spot;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.text.Words;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Where the names on a plan stand. Lines that cross are found by the JDK's own geometry. */
class PlanSheetTest {
  private static final Words WORDS = Words.of(Locale.ROOT);

  private static BuildingShape shape(String toml) {
    return BuildingShape.of(JobDraft.of(toml));
  }

  private static List<String> heavy(Picture picture) {
    return picture.marks().stream()
        .filter(mark -> mark instanceof Mark.Words words && words.bold())
        .map(mark -> ((Mark.Words) mark).text())
        .toList();
  }

  /** Slabs that are no rectangle, of our own invention, each corner lit in turn. */
  @Test
  void noNameStandsOnAnEdge() {
    List<String> outlines =
        List.of(
            "A1 = [\"0 m\",\"0 m\"], A4 = [\"18 m\",\"0 m\"], B4 = [\"18 m\",\"%s m\"], B1 = [\"0 m\",\"9 m\"]",
            "A1 = [\"0 m\",\"-%s m\"], A4 = [\"18 m\",\"0.4 m\"], B4 = [\"19 m\",\"9 m\"], B1 = [\"-1 m\",\"9.5 m\"]",
            "A1 = [\"0 m\",\"0 m\"], C3 = [\"12 m\",\"0 m\"], C5 = [\"12 m\",\"%s m\"],"
                + " C6 = [\"18 m\",\"4 m\"], B4 = [\"18 m\",\"9 m\"], B1 = [\"0 m\",\"9 m\"]");
    int named = 0;
    for (String outline : outlines) {
      for (String far : List.of("3", "8.7", "9.1", "9.3", "11")) {
        BuildingShape shape = shape(String.format(OF_ITS_OWN_OUTLINE, String.format(outline, far)));
        for (String lit :
            List.of("", "slab.corners.B4[2]", "slab.corners.A1[1]", "building.span")) {
          for (double width : new double[] {420, 640, 1100}) {
            named += assertOffTheEdges(PlanSheet.of(shape, WORDS, lit, width, 330));
          }
        }
      }
    }
    assertTrue(named > 1500, named + " names");
  }

  private static final String OF_ITS_OWN_OUTLINE =
      """
      [building]
      span = "9 m"
      length = "18 m"
      bays = ["6 m", "6 m", "6 m"]
      [slab]
      corners = { %s }
      [anchors]
      edge_distance = "600 mm"
      [mullions]
      end_1 = ["3 m", "6 m"]
      end_n = ["4.5 m"]
      [openings.D1]
      wall = "end 1"
      from = "2 m"
      opening_width = "2 m"
      height = "2 m"
      """;

  /** Returns how many names were looked at: all words but those of dimensions. */
  private static int assertOffTheEdges(Picture plan) {
    List<Line2D> edges = new ArrayList<>();
    for (Mark mark : plan.marks()) {
      if (mark instanceof Mark.Polygon polygon) {
        edges.addAll(edges(polygon.corners()));
      } else if (mark instanceof Mark.Rectangle rectangle && rectangle.ink() != Ink.BLANK) {
        edges.addAll(edges(rectangle.box()));
      }
    }
    int named = 0;
    for (Mark mark : plan.marks()) {
      if (mark instanceof Mark.Words words && !words.text().matches("\\d+( mm)?")) {
        double wide = words.bold() ? Sheet.wideBold(words.text()) : Sheet.wide(words.text());
        double left = words.anchor().left(words.baseline().x(), wide);
        Rectangle2D ink = new Rectangle2D.Double(left + 3, words.baseline().y() - 9, wide - 6, 9);
        edges.forEach(edge -> assertFalse(edge.intersects(ink), words + " on " + edge.getP1()));
        named++;
      }
    }
    return named;
  }

  private static List<Line2D> edges(Box box) {
    return edges(
        List.of(
            new Spot(box.left(), box.top()),
            new Spot(box.right(), box.top()),
            new Spot(box.right(), box.bottom()),
            new Spot(box.left(), box.bottom())));
  }

  private static List<Line2D> edges(List<Spot> corners) {
    List<Line2D> edges = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      edges.add(edge(corners.get(i), corners.get((i + 1) % corners.size())));
    }
    return edges;
  }

  private static Line2D edge(Spot from, Spot to) {
    return new Line2D.Double(from.x(), from.y(), to.x(), to.y());
  }

  /** As wide and high as the plan is beside the fields, with letters of twice the size. */
  @Test
  void atLargeLettersDoorAndPostsKeepTheirNames() {
    String outline =
        "A1 = [\"0 m\",\"0 m\"], A4 = [\"18 m\",\"0 m\"], B4 = [\"18 m\",\"9.3 m\"], B1 = [\"0 m\",\"9 m\"]";
    BuildingShape shape =
        shape(
            String.format(OF_ITS_OWN_OUTLINE, outline)
                .replace("[\"3 m\", \"6 m\"]", "[\"1.5 m\", \"6.5 m\"]")
                .replace("600 mm", "75 mm")
                .replace("from = \"2 m\"", "from = \"2.5 m\"")
                .replace("opening_width = \"2 m\"", "opening_width = \"2.88 m\""));
    List<String> written =
        PlanSheet.of(shape, WORDS, "slab.corners.B4[2]", 248, 208).marks().stream()
            .filter(mark -> mark instanceof Mark.Words)
            .map(mark -> ((Mark.Words) mark).text())
            .toList();
    assertTrue(
        written.containsAll(List.of("D1", "M2", "9000", "end 1", "end n")), written::toString);
    assertEquals(2, written.stream().filter("M1"::equals).count(), written::toString);
  }

  /** The corner at the end of a frame has one name, heavy while it is typed. */
  @Test
  void cornerAtAFrameIsNamedOnce() {
    String outline =
        "A1 = [\"0 m\",\"0 m\"], A4 = [\"18 m\",\"0 m\"], B4 = [\"18 m\",\"9.3 m\"], B1 = [\"0 m\",\"9 m\"]";
    BuildingShape shape = shape(String.format(OF_ITS_OWN_OUTLINE, outline));
    Picture plan = PlanSheet.of(shape, WORDS, "slab.corners.B4[2]", 640, 330);
    assertEquals(List.of("B4"), heavy(plan));
    assertEquals(
        1,
        plan.marks().stream()
            .filter(mark -> mark instanceof Mark.Words words && words.text().equals("B4"))
            .count());
  }
}
