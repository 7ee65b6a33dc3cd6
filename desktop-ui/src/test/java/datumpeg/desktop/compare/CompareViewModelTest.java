package datumpeg.desktop.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CompareViewModelTest {
  private final CompareViewModel model =
      new CompareViewModel(Words.of(Locale.ROOT), Runnable::run, Runnable::run);

  private ComparePage page() {
    return model.page().get();
  }

  @Test
  void eachCrewHasAStripWithItsNumbers() {
    model.show(InventedCrews.state(24));
    assertEquals(List.of("Amber", "Blue"), page().strips().stream().map(GroupStrip::name).toList());
    GroupStrip amber = page().strips().get(0);
    assertEquals("12 jobs, 24 outcomes", amber.counts());
    assertEquals(24, amber.values().size());
    assertEquals(12, amber.jobMeans().size());
    assertTrue(amber.halfWidth().isPresent());
    assertTrue(amber.numbers().contains("without measuring at least"), amber.numbers());
  }

  @Test
  void whatNeverVariesApartIsSaidAndSpoken() {
    model.show(InventedCrews.state(24));
    assertTrue(
        page().spoken().contains("Crew and meter never vary apart: Amber only with tilt-1"),
        page().spoken());
    model.choose(CompareMatter.FACTOR, "SLAB_LAYER");
    assertEquals("SLAB_LAYER", page().chosen().get(CompareMatter.FACTOR));
    assertFalse(page().spoken().contains("never vary apart"), page().spoken());
  }

  @Test
  void scaleAndTargetFollowTheChoice() {
    model.show(InventedCrews.state(12));
    model.choose(CompareMatter.TARGET, "/across");
    model.choose(CompareMatter.SCALE, "OF_PERMITTED");
    assertEquals("%", page().unit());
    assertEquals("6 jobs, 6 outcomes", page().strips().get(0).counts());
  }

  @Test
  void singleJobHasNoIntervalAndEmptyScreenSaysWhy() {
    assertTrue(page().sentences().get(0).startsWith("No job of the record is worked out yet"));
    model.show(InventedCrews.state(1));
    assertTrue(page().strips().get(0).halfWidth().isEmpty());
    assertTrue(page().strips().get(0).numbers().contains("one job: no interval"));
    assertTrue(page().sentences().get(0).startsWith("Only one crew has outcomes of this check"));
  }

  @Test
  void filtersHoldTogether() {
    model.show(InventedCrews.state(24));
    model.choose(CompareMatter.SITE, "Fernhollow");
    assertEquals("4 jobs, 8 outcomes", page().strips().get(0).counts());
    model.choose(CompareMatter.SLAB, "Millgate");
    model.choose(CompareMatter.METER, "tilt-1");
    assertEquals(List.of("Amber"), page().strips().stream().map(GroupStrip::name).toList());
    assertEquals("2 jobs, 4 outcomes", page().strips().get(0).counts());
    assertEquals("Millgate", page().chosen().get(CompareMatter.SLAB));
  }

  /** Job n was measured n days after 2 March 2026. */
  @Test
  void periodIsInclusiveAndAnEmptyOneSaysWhy() {
    model.show(InventedCrews.state(24));
    model.between(Optional.of(LocalDate.of(2026, 3, 4)), Optional.of(LocalDate.of(2026, 3, 7)));
    assertEquals("2 jobs, 4 outcomes", page().strips().get(0).counts());
    model.between(Optional.of(LocalDate.of(2027, 1, 1)), Optional.empty());
    assertEquals(List.of(), page().strips());
    assertTrue(
        page().sentences().get(0).startsWith("No outcome of this check fits all that is chosen"),
        page().sentences().toString());
    assertFalse(
        String.join(" ", page().sentences()).contains("No job has an outcome"),
        "jobs have outcomes, but none of those chosen");
  }

  @Test
  void numbersAreATableWithARowForEachJob() {
    model.show(InventedCrews.state(24));
    List<String> lines = page().csv().get().lines().toList();
    assertEquals(25, lines.size());
    assertTrue(lines.get(1).startsWith("column-plumb,crew,Amber,job-0,2,mm,"), lines.get(1));
  }
}
