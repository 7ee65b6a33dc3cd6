package datumpeg.desktop.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ChartWindowTest {
  private static final ChartWindow ALL = ChartWindow.all(100);

  @Test
  void zoomKeepsThePlaceWhereItIs() {
    ChartWindow near = ALL.zoomed(4, 24.5, 100);
    assertEquals(25, near.width(), 1e-9);
    assertEquals(0.25, (24.5 - near.from()) / near.width(), 1e-9);
  }

  @Test
  void nothingLiesBeyondThePoints() {
    assertEquals(ALL, ALL.zoomed(0.5, 20, 100));
    assertEquals(ALL, ALL.moved(30, 100));
    ChartWindow end = ALL.zoomed(10, 50, 100).moved(1000, 100);
    assertEquals(99.5, end.to(), 1e-9);
    assertEquals(10, end.width(), 1e-9);
  }

  @Test
  void fourPointsAreTheLeastAndAllIfThereAreFewer() {
    assertEquals(4, ALL.zoomed(1e9, 50, 100).width(), 1e-9);
    assertEquals(2, ChartWindow.all(2).zoomed(8, 0, 2).width(), 1e-9);
    assertEquals(1, ChartWindow.all(0).zoomed(8, 0, 0).width(), 1e-9);
  }

  @Test
  void pointIsBroughtIntoViewByTheLeastMove() {
    ChartWindow middle = ALL.zoomed(10, 49.5, 100);
    assertEquals(middle, middle.showing(50, 100));
    ChartWindow later = middle.showing(70, 100);
    assertEquals(70.5, later.to(), 1e-9);
    assertEquals(10, later.width(), 1e-9);
    assertEquals(19.5, middle.showing(20, 100).from(), 1e-9);
  }
}
