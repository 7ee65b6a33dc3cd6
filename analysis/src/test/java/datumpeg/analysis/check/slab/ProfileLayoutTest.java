package datumpeg.analysis.check.slab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.detail.FlatnessPlan;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Lines of at least 3.3 m, 1.2 m apart, 0.6 m from edges, 45 degrees in sections narrower than 7.5
 * m (data sheets for E1155M named at {@link ProfileLayout}).
 */
class ProfileLayoutTest {
  private static final FlatnessPlan.Line ALONG = new FlatnessPlan.Line(1, 1, 9, 1);
  private static final FlatnessPlan.Line ACROSS = new FlatnessPlan.Line(10, 0.6, 10, 8.4);

  private static String said(double width, FlatnessPlan.Line... lines) {
    Map<String, FlatnessPlan.Line> named = new TreeMap<>();
    for (FlatnessPlan.Line line : lines) {
      named.put("L" + (named.size() + 1), line);
    }
    List<PlanPoint> slab =
        List.of(
            new PlanPoint(0, 0),
            new PlanPoint(18, 0),
            new PlanPoint(18, width),
            new PlanPoint(0, width));
    Optional<Note> note = new ProfileLayout(named, slab).note();
    note.ifPresent(told -> assertEquals(Note.Kind.INFORMATION, told.kind()));
    return note.map(Note::text).orElse("");
  }

  @Test
  void linesAlongAndAcrossAreAsAskedFor() {
    assertEquals("", said(9, ALONG, ACROSS));
    assertEquals("", said(9));
  }

  @Test
  void aShortLineIsNamed() {
    String said = said(9, ALONG, ACROSS, new FlatnessPlan.Line(2, 4, 5.2, 4));
    assertTrue(said.contains("L3 is 3.20 m long, at least 3.30 m"), said);
    assertTrue(said.contains("verify against your copy"), said);
    FlatnessPlan.Line shorter = new FlatnessPlan.Line(1, 1, 7, 1);
    assertEquals("", said(9, shorter, ACROSS, new FlatnessPlan.Line(2, 4, 5.3, 4)));
  }

  @Test
  void linesCloseTogetherOrToAnEdgeAreNamed() {
    FlatnessPlan.Line beside = new FlatnessPlan.Line(9, 2.1, 1, 2.1);
    FlatnessPlan.Line crossing = new FlatnessPlan.Line(11.3, 0.6, 11.3, 8.4);
    assertEquals(
        "The profiles are not laid as E1155M asks (verify against your copy): L1 and L3 are 1.10 m"
            + " apart, at least 1.20 m. FF and FL are told all the same.",
        said(9, ALONG, ACROSS, beside, crossing));
    FlatnessPlan.Line low = new FlatnessPlan.Line(1, 0.5, 9, 0.5);
    assertTrue(said(9, low, ACROSS).contains("L1 comes within 0.50 m of an edge"));
  }

  @Test
  void onlyOneWayDoesNotSeeTheFloor() {
    assertTrue(said(9, ALONG).contains("8.00 m run along the first side and 0.00 m across it"));
  }

  @Test
  void aNarrowSlabIsReadAtFortyFiveDegrees() {
    FlatnessPlan.Line slanting = new FlatnessPlan.Line(1, 1, 5, 5);
    FlatnessPlan.Line other = new FlatnessPlan.Line(12, 1, 8, 5);
    assertEquals("", said(7.4, slanting, other));
    assertTrue(said(7.4, slanting, ALONG).contains("at 45 degrees to its sides"));
    assertTrue(said(7.5, slanting, ALONG).contains("8.00 m run along"));
  }
}
