package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.source.InventedJobs;
import java.util.List;
import org.junit.jupiter.api.Test;

class FormViewModelTest {
  private final FormAtHand form = new FormAtHand();

  @Test
  void blankFormSaysWhatIsNeeded() {
    assertEquals("A new job", form.model.page().get().heading());
    assertEquals("14 fields are still needed.", form.answer());
    assertEquals("such as 9000 mm or 9 m", form.row("building.span").example());
    assertEquals("such as 150 mm", form.row("sections.column_depth").example());
    assertEquals("Needed.", form.row("building.span").told());
    assertEquals("", form.row("building.span").wrong());
    assertFalse(form.model.page().get().maySave());
    assertEquals(
        "The plan is drawn as soon as the span or the length is given.",
        form.model.page().get().spokenPlan());
  }

  @Test
  void filledFormIsStoredAsTheJobFileItWrites() {
    form.fillIn();
    assertEquals("All there. Store it, and measuring can begin.", form.answer());
    assertTrue(form.model.page().get().maySave());
    form.model.store();
    assertEquals(1, form.shelf.taken.size());
    assertEquals(9, JobFile.read(form.shelf.taken.get(0), "x").setOut().building().lengthMetres());
    assertEquals("Stored as revision 1 of ashby-12.", form.model.said().get());
    form.model.openStored();
    assertEquals(List.of("ashby-12"), form.opened);
    assertEquals("Nothing differs from the newest revision.", form.answer());
    assertFalse(form.model.page().get().maySave());
  }

  @Test
  void mistakeStandsAtItsFieldInPlainWords() {
    form.fillIn();
    form.type("building.bays", "4500; 4400");
    assertTrue(
        form.row("building.bays").wrong().contains("the bays are 100"),
        form.row("building.bays").wrong());
    form.type("building.span", "wide");
    assertTrue(
        form.row("building.span")
            .wrong()
            .startsWith("“Span, slab edge to edge”: 'wide' is not a value"),
        form.row("building.span").wrong());
    assertEquals("wide", form.row("building.span").text());
    form.type("job.started", "12.3.2026");
    assertTrue(
        form.row("job.started").wrong().endsWith("expected a date, such as 2026-03-02."),
        form.row("job.started").wrong());
    form.type("job.started", "");
    assertEquals("What is marked does not make sense yet.", form.answer());
    assertFalse(form.model.page().get().maySave());
  }

  @Test
  void fieldTellsHowItIsReadInTheUsersUnits() {
    form.type("building.span", "9 m");
    assertEquals("= 9000.0 mm", form.row("building.span").told());
    form.type("building.bays", "6 m, 6000");
    assertEquals("2 together = 12000.0 mm", form.row("building.bays").told());
    form.words.units(LengthDisplay.IMPERIAL);
    int filled = form.model.page().get().filled();
    form.model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("= 29' 6 5/16\"", form.row("building.span").told());
    assertTrue(form.model.page().get().filled() > filled, "a bare number would change its meaning");
    form.type("building.length", "60-6");
    assertEquals("= 60' 6\"", form.row("building.length").told());
  }

  @Test
  void idOfAnotherJobIsRefused() {
    form.fillIn();
    form.type("job.id", InventedJobs.ID);
    assertTrue(
        form.row("job.id").wrong().startsWith("The record has a job fernhollow-03 already."));
    assertFalse(form.model.page().get().maySave());
  }

  @Test
  void whatIsTypedIsThereAfterTheWindowWasClosed() {
    form.fillIn();
    form.type("building.pitch", "stee");
    FormViewModel again = form.another();
    again.restore(form.kept);
    again.show(InventedJobs.state(InventedJobs.reduced()));
    List<String> before = texts(form.model);
    assertTrue(before.contains("stee"));
    assertEquals(before, texts(again));
  }

  private static List<String> texts(FormViewModel model) {
    return model.page().get().groups().stream()
        .flatMap(group -> group.rows().stream())
        .map(Row::text)
        .toList();
  }

  @Test
  void brokenSettingsBeginABlankForm() {
    form.kept.put("form.now.draft", "[job\n");
    form.model.restore(form.kept);
    form.model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("14 fields are still needed.", form.answer());
  }

  @Test
  void whatStandsInTheFormIsPutAsideAndTakenUpAgain() {
    form.type("job.name", "Half a shed");
    form.model.begin();
    assertEquals("", form.row("job.name").text());
    assertEquals("Half a shed", form.model.page().get().aside());
    form.type("job.name", "Another");
    form.model.swap();
    assertEquals("Half a shed", form.row("job.name").text());
    assertEquals("Another", form.model.page().get().aside());
  }

  @Test
  void openingsAndMetersComeAndGo() {
    form.fillIn();
    form.model.edits().addOpening();
    form.type("openings.D1.from", "1 m");
    form.type("openings.D1.opening_width", "2 m");
    form.type("openings.D1.height", "2.1 m");
    form.model.edits().addMeter("site laser");
    form.type("meters.site-laser.expanded_uncertainty", "1.5 mm");
    assertTrue(form.model.page().get().maySave(), form::answer);
    form.model.edits().addMeter("site laser");
    assertEquals("There is a meter site-laser already.", form.model.said().get());
    form.model.edits().remove("openings.D1");
    assertEquals(
        List.of(),
        form.model.page().get().groups().stream()
            .filter(group -> group.group().id().equals("opening"))
            .toList());
  }
}
