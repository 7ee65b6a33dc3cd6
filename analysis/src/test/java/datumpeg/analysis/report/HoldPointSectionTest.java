package datumpeg.analysis.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.signoff.Acceptance;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.HoldPoint.State;
import datumpeg.analysis.signoff.SignOffItem;
import datumpeg.analysis.signoff.SignOffItem.How;
import datumpeg.analysis.signoff.Signature;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Hold points on the page; names and numbers are invented. */
class HoldPointSectionTest {
  private static final Instant AT = Instant.parse("2026-03-03T09:00:00Z");
  private static final SignOffItem CONFORMS =
      item("slab-size A1-A4", "+2.1 ± 2.0 mm", How.CONFORMS);
  private static final SignOffItem REWORKED =
      item("slab-square B1", "+1.2 ± 2.1 mm, conforming, round 2", How.REWORKED);
  private static final SignOffItem ACCEPTED =
      new SignOffItem(
          "slab-square A1",
          "+11.9 ± 2.1 mm, nonconforming",
          How.ACCEPTED,
          Optional.of(
              new Acceptance(
                  "arrival",
                  "slab-square A1",
                  "+11.9 ± 2.1 mm, nonconforming",
                  "M. Reed",
                  "letter 7 of 3 March",
                  "the edge is trimmed by the cladding",
                  AT)));
  private static final SignOffItem OPEN =
      item("question edge-sound", "Is the edge sound? No. Cracked at B2.", How.ANSWERED_NO);

  private static SignOffItem item(String key, String found, How how) {
    return new SignOffItem(key, found, how, Optional.empty());
  }

  private static HoldPoint point(String stage, State state, SignOffItem... items) {
    Optional<Signature> signature =
        state == State.SIGNED
            ? Optional.of(new Signature(stage, "M. Reed", "", AT))
            : Optional.empty();
    return new HoldPoint(
        new Stage(stage, "", List.of(), Map.of(), true), state, List.of(items), signature);
  }

  private static StageFindings goOn(String stage) {
    StageFindings lift = InventedFindings.lift();
    return new StageFindings(
        stage,
        lift.readingCount(),
        List.of(),
        Map.of(),
        Map.of(),
        List.of(),
        List.of(),
        new Answer(Answer.Kind.GO_ON, "The slab fits: set out.", ""));
  }

  private static String html(ReportOptions options, HoldPoint... points) {
    return new Report(
            InventedShed.job(),
            new Findings("larkrise-01", "digest", List.of(goOn("arrival"))),
            InventedShed.readings(),
            List.of(points))
        .html(options);
  }

  private static String words(HoldPoint... points) {
    return PageReading.words(PageReading.parsed(html(InventedFindings.all(), points)));
  }

  @Test
  void byWhatEachItemIsClosedIsSaid() {
    String text = words(point("arrival", State.SIGNED, CONFORMS, REWORKED, ACCEPTED));
    assertTrue(text.contains("closed, signed by M. Reed on 2026-03-03 (UTC)."), text);
    assertTrue(
        text.contains("Items closed: 1 by conformance, 1 by rework, 1 accepted as they are."),
        text);
    assertTrue(
        text.contains(
            "Accepted as it is: Slab squareness, corner A1: +11.9 ± 2.1 mm, nonconforming; by M."
                + " Reed on 2026-03-03 (UTC), engineer's reference letter 7 of 3 March, because:"
                + " the edge is trimmed by the cladding"),
        text);
    assertTrue(
        text.contains(
            "Closed by rework: Slab squareness, corner B1: +1.2 ± 2.1 mm, conforming, round 2."),
        text);
    assertFalse(text.contains("Not done"), "what is signed is done");
  }

  @Test
  void aStageWhoseHoldPointIsOpenIsNeverShownAsDone() {
    String text = words(point("arrival", State.OPEN, CONFORMS, OPEN));
    assertTrue(text.contains("Not done, the hold point is open. By the numbers: The slab fits"));
    assertTrue(text.contains("OPEN, 1 of 2 items are open. Do not go past this stage."), text);
    assertTrue(text.contains("Open: question: Is the edge sound? No. Cracked at B2."), text);
    String unsigned = words(point("arrival", State.TO_SIGN, CONFORMS));
    assertTrue(unsigned.contains("Not done, the hold point is open."), unsigned);
    assertTrue(unsigned.contains("every item is closed, nobody has signed"), unsigned);
    String signed = html(InventedFindings.all(), point("arrival", State.SIGNED, CONFORMS));
    String open = html(InventedFindings.all(), point("arrival", State.OPEN, CONFORMS, OPEN));
    assertFalse(mark(signed).equals(mark(open)), "the large mark is the same");
  }

  private static String mark(String page) {
    int start = page.indexOf("class=\"mark\"");
    return page.substring(start, page.indexOf("</svg>", start));
  }

  @Test
  void stagesThatWereNotBegunAreNamedInOneLineAndThoseWithoutHoldPointNotAtAll() {
    String text =
        words(
            point("arrival", State.NONE, CONFORMS),
            point("standing", State.NOT_BEGUN),
            point("lift", State.NOT_BEGUN));
    assertTrue(text.contains("Open, as nothing was measured there yet: standing, lift."), text);
    assertFalse(text.contains("Not done"), text);
    assertEquals(-1, words(point("arrival", State.NONE)).indexOf("Hold points"));
  }

  @Test
  void feetAndInchesStandHereToo() {
    ReportOptions imperial =
        new ReportOptions(Optional.empty(), LengthDisplay.IMPERIAL, List.of(), "0.1.0", "today");
    String page = html(imperial, point("arrival", State.OPEN, ACCEPTED, OPEN));
    // 11.9 mm / 25.4 mm = 0.4685 in = 7.496 sixteenths.
    assertTrue(
        PageReading.words(PageReading.parsed(page)).contains("+7/16\" (11.9 ± 2.1 mm)"), page);
  }

  private static AttachedPhoto photo(String stage, String picture, String trouble) {
    return new AttachedPhoto(stage, "edge <1>.jpg", "0".repeat(64), "corner B2", picture, trouble);
  }

  private static String withPhotos(HoldPoint point, AttachedPhoto... photos) {
    return new Report(
            InventedShed.job(),
            new Findings("larkrise-01", "digest", List.of(goOn("arrival"))),
            InventedShed.readings(),
            List.of(point),
            List.of(photos))
        .html(InventedFindings.all());
  }

  @Test
  void photosStandWithTheHoldPointOfTheirStage() {
    String page =
        withPhotos(
            point("arrival", State.SIGNED, CONFORMS),
            photo("arrival", "data:image/jpeg;base64,AAAA", ""),
            photo("arrival", "", "its file is not there."),
            photo("lift", "data:image/jpeg;base64,BBBB", ""));
    assertTrue(page.contains("<img src=\"data:image/jpeg;base64,AAAA\" alt=\"corner B2\"/>"), page);
    assertTrue(
        page.contains("Photo edge &lt;1&gt;.jpg: corner B2. NOT SHOWN: its file is not there."));
    assertFalse(page.contains("BBBB"), "a photo of a stage that is not told");
    assertTrue(page.contains("SHA-256 " + "0".repeat(64)));
    assertTrue(page.indexOf("signed by M. Reed") < page.indexOf("AAAA"));
  }

  @Test
  void photoOfAStageWithoutReadingsOrHoldPointIsShownToo() {
    for (State state : List.of(State.NONE, State.NOT_BEGUN)) {
      String page =
          withPhotos(point("curing", state), photo("curing", "data:image/png;base64,CCCC", ""));
      assertTrue(page.contains("CCCC"), state.toString());
    }
  }

  @Test
  void photoIsShownFromThePageAloneOrNotAtAll() {
    for (String elsewhere :
        List.of("edge.jpg", "https://example.invalid/a.jpg", "data:text/html,x")) {
      assertThrows(
          IllegalArgumentException.class, () -> photo("arrival", elsewhere, ""), elsewhere);
    }
    assertThrows(IllegalArgumentException.class, () -> photo("arrival", "", ""));
  }
}
