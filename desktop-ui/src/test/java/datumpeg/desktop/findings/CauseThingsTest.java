package datumpeg.desktop.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.Cause;
import java.util.List;
import org.junit.jupiter.api.Test;

class CauseThingsTest {
  private static List<String> things(String... symptoms) {
    return CauseThings.of(new Cause(Verdict.NONCONFORMING, "", "", List.of(symptoms)));
  }

  @Test
  void whatIsMovedFollowsFromWhatIsWrong() {
    assertEquals(List.of("column.A3"), things("column-plumb A3/across", "column-plumb A3/along"));
    assertEquals(List.of("portal.3"), things("portal-plumb 3/across", "clear-span 3/eave"));
    assertEquals(List.of("wall.B"), things("wall-square B", "foot-line B2"));
    assertEquals(List.of("column.A2", "column.A1"), things("frame-spacing A1-A2/base"));
    assertEquals(List.of("portal.2"), things("frame-spacing 1-2/apex"));
    assertEquals(List.of("line.A2"), things("line-straight line.A2"));
    assertEquals(List.of(), things("straightness line.A/chord"));
  }

  @Test
  void whatTheRemedyNamesComesFirst() {
    String action = "Ask the engineer before shifting A1 by 12.3 mm toward end n.";
    assertEquals(
        List.of("column.A1", "column.A2"),
        CauseThings.of(
            new Cause(Verdict.NONCONFORMING, "", action, List.of("frame-spacing A1-A2/base"))));
  }

  @Test
  void concreteIsNotMoved() {
    assertEquals(List.of(), things("slab-square A1", "slab-diagonals slab", "seat-level seats"));
  }
}
