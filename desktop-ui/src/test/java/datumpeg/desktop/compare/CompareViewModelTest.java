package datumpeg.desktop.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
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
}
