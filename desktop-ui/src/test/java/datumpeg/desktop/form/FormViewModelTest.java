package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FormViewModelTest {
  private final Words words = Words.of(Locale.ROOT);
  private final Shelf shelf = new Shelf();
  private final Map<String, String> kept = new HashMap<>();
  private final List<String> opened = new ArrayList<>();
  private final FormViewModel model = model();

  /** Job files in memory. */
  private static final class Shelf implements JobShelf {
    final Map<String, String> newest = new HashMap<>();
    final List<String> taken = new ArrayList<>();
    List<String> strays = List.of();
    String file = "";

    @Override
    public Optional<String> newest(String job) {
      return Optional.ofNullable(newest.get(job));
    }

    @Override
    public String read(Path path) {
      if (file.isEmpty()) {
        throw new InputException("There is no job file " + path + ".");
      }
      return file;
    }

    @Override
    public Taken take(String text, String base) {
      String job = JobFile.read(text, "job file").identity().id();
      if (!newest.getOrDefault(job, "").equals(base)) {
        return new Taken(job, 0, Outcome.OVERTAKEN, List.of());
      }
      taken.add(text);
      newest.put(job, text);
      return new Taken(job, taken.size(), Outcome.STORED, strays);
    }
  }

  private FormViewModel model() {
    FormViewModel made =
        new FormViewModel(
            words,
            shelf,
            (name, work, done, failed) -> {
              try {
                work.run();
              } catch (FailureException e) {
                failed.accept(e);
                return;
              }
              done.run();
            },
            kept::putAll,
            opened::add,
            Runnable::run,
            Runnable::run);
    made.show(InventedJobs.state(InventedJobs.reduced()));
    return made;
  }

  private void type(String path, String text) {
    model.type(row(path).field(), text);
  }

  private Row row(String path) {
    return model.page().get().groups().stream()
        .flatMap(group -> group.rows().stream())
        .filter(row -> row.field().path().equals(path))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no field " + path));
  }

  private String answer() {
    return model.page().get().answer();
  }

  private void fillIn() {
    type("job.name", "Cart shed, Ashby");
    type("job.id", "ashby-12");
    type("job.site", "Ashby");
    type("job.crew", "Blue");
    type("building.span", "6 m");
    type("building.length", "9000");
    type("building.bays", "4500; 4.5 m");
    type("building.eave_height", "2.7 m");
    type("building.pitch", "15");
    type("sections.column_depth", "120");
    type("sections.column_width", "60");
    type("sections.side_girt_depth", "60");
    type("sections.end_girt_depth", "60");
    type("sections.rafter_depth", "120");
  }

  @Test
  void blankFormSaysWhatIsNeeded() {
    assertEquals("A new job", model.page().get().heading());
    assertEquals("14 fields are still needed.", answer());
    assertEquals("Needed.", row("building.span").told());
    assertEquals("", row("building.span").wrong());
    assertFalse(model.page().get().maySave());
    assertEquals(
        "The plan is drawn as soon as the span or the length is given.",
        model.page().get().spokenPlan());
  }

  @Test
  void filledFormIsStoredAsTheJobFileItWrites() {
    fillIn();
    assertEquals("All there. Store it, and measuring can begin.", answer());
    assertTrue(model.page().get().maySave());
    model.store();
    assertEquals(1, shelf.taken.size());
    assertEquals(9, JobFile.read(shelf.taken.get(0), "x").setOut().building().lengthMetres());
    assertEquals("Stored as revision 1 of ashby-12.", model.said().get());
    model.openStored();
    assertEquals(List.of("ashby-12"), opened);
    assertEquals("Nothing differs from the newest revision.", answer());
    assertFalse(model.page().get().maySave());
  }

  @Test
  void mistakeStandsAtItsFieldInPlainWords() {
    fillIn();
    type("building.bays", "4500; 4400");
    assertTrue(
        row("building.bays").wrong().contains("the bays are 100"), row("building.bays").wrong());
    type("building.span", "wide");
    assertTrue(
        row("building.span").wrong().startsWith("“Span, slab edge to edge”: 'wide' is not a value"),
        row("building.span").wrong());
    assertEquals("wide", row("building.span").text());
    assertEquals("What is marked does not make sense yet.", answer());
    assertFalse(model.page().get().maySave());
  }

  @Test
  void fieldTellsHowItIsReadInTheUsersUnits() {
    type("building.span", "9 m");
    assertEquals("= 9000.0 mm", row("building.span").told());
    type("building.bays", "6 m, 6000");
    assertEquals("2 together = 12000.0 mm", row("building.bays").told());
    words.units(LengthDisplay.IMPERIAL);
    int filled = model.page().get().filled();
    model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("= 29' 6 5/16\"", row("building.span").told());
    assertTrue(model.page().get().filled() > filled, "a bare number would change its meaning");
    type("building.length", "60-6");
    assertEquals("= 60' 6\"", row("building.length").told());
  }

  @Test
  void idOfAnotherJobIsRefused() {
    fillIn();
    type("job.id", InventedJobs.ID);
    assertTrue(row("job.id").wrong().startsWith("The record has a job fernhollow-03 already."));
    assertFalse(model.page().get().maySave());
  }

  @Test
  void whatIsTypedIsThereAfterTheWindowWasClosed() {
    fillIn();
    type("building.pitch", "stee");
    FormViewModel again = model();
    again.restore(kept);
    again.show(InventedJobs.state(InventedJobs.reduced()));
    List<String> before = texts(model);
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
    kept.put("form.now.draft", "[job\n");
    model.restore(kept);
    model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("14 fields are still needed.", answer());
  }

  @Test
  void whatStandsInTheFormIsPutAsideAndTakenUpAgain() {
    type("job.name", "Half a shed");
    model.begin();
    assertEquals("", row("job.name").text());
    assertEquals("Half a shed", model.page().get().aside());
    type("job.name", "Another");
    model.swap();
    assertEquals("Half a shed", row("job.name").text());
    assertEquals("Another", model.page().get().aside());
  }

  @Test
  void revisionTellsInWordsWhatDiffers() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    shelf.newest.put("larkrise-01", toml);
    model.change("larkrise-01");
    assertEquals("Hay shed, Larkrise Farm: the drawing changes", model.page().get().heading());
    assertEquals(List.of(), model.page().get().differences());
    assertFalse(row("job.id").fixed().isEmpty());
    type("building.span", "9100");
    type("building.eave_height", "3600");
    type("job.slab_by", "");
    type("sections.knee_gap", "5 mm");
    model.remove("openings.D1");
    assertEquals(
        List.of(
            "Slab laid by: no longer given, was Stonecroft.",
            "Span, slab edge to edge: 9100 mm, was 9 m.",
            "Eave height, slab to knee: written 3600 mm, was 3.6 m; the same size.",
            "Knee gap: 5 mm, was not given.",
            "Opening D1, Wall: no longer given, was end 1."),
        model.page().get().differences().stream().sorted(this::inFormOrder).toList().subList(0, 5));
  }

  /** Differences come in the order of the file; what is gone comes last. */
  private int inFormOrder(String one, String other) {
    List<String> order = List.of("Slab", "Span", "Eave", "Knee", "Opening D1, Wall");
    return Integer.compare(place(order, one), place(order, other));
  }

  private static int place(List<String> order, String sentence) {
    for (int i = 0; i < order.size(); i++) {
      if (sentence.startsWith(order.get(i))) {
        return i;
      }
    }
    return order.size();
  }

  @Test
  void revisionNamesTheReadingsThatHaveNoPlaceAnyMore() throws IOException {
    shelf.newest.put("larkrise-01", BuildingShapeTest.sample("larkrise-01"));
    shelf.strays = List.of("lift, base.A9-base.A10: there is no frame 9.");
    model.change("larkrise-01");
    type("job.crew", "Violet");
    model.store();
    assertEquals(
        "Stored as revision 1 of larkrise-01.\n"
            + "One reading taken before has no place in it any more. It stays in the record and is"
            + " left out of what is found:\n"
            + "lift, base.A9-base.A10: there is no frame 9.",
        model.said().get());
  }

  @Test
  void revisionThatCameMeanwhileIsNotOverwrittenUnseen() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    shelf.newest.put("larkrise-01", toml);
    model.change("larkrise-01");
    type("job.crew", "Violet");
    shelf.newest.put("larkrise-01", toml.replace("\"9 m\"", "\"9.2 m\""));
    model.store();
    assertEquals(List.of(), shelf.taken);
    assertTrue(model.said().get().startsWith("Nothing was stored"), model.said().get());
    assertTrue(
        model.page().get().differences().stream().anyMatch(text -> text.contains("was 9.2 m")),
        () -> model.page().get().differences().toString());
    model.store();
    assertEquals(1, shelf.taken.size());
  }

  @Test
  void fileThatIsNotChangedIsStoredByteForByte() throws IOException {
    shelf.file = BuildingShapeTest.sample("quarrybend-02");
    model.takeFile(Path.of("job.toml"));
    assertEquals("A new job", model.page().get().heading());
    assertTrue(model.page().get().maySave());
    model.store();
    assertEquals(List.of(shelf.file), shelf.taken);
  }

  @Test
  void fileOfAJobThatIsThereIsItsRevision() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    shelf.newest.put("larkrise-01", toml);
    shelf.file = toml.replace("\"Amber\"", "\"Violet\"");
    model.takeFile(Path.of("job.toml"));
    assertEquals(List.of("Crew: Violet, was Amber."), model.page().get().differences());
    model.store();
    assertEquals(List.of(shelf.file), shelf.taken);
  }

  @Test
  void fileWithMistakesFillsTheFormAndTellsThem() {
    shelf.file = "[job]\nid = \"x 1\"\ncolour = \"red\"\n[building]\nspan = \"9\"\n";
    model.takeFile(Path.of("job.toml"));
    assertTrue(row("job.id").wrong().contains("letters, digits and -"), row("job.id").wrong());
    assertEquals("9", row("building.span").text());
    fillIn();
    type("building.roof", "gable");
    assertEquals(1, model.page().get().strange().size(), model.page().get().strange()::toString);
    assertTrue(model.page().get().strange().get(0).sentence().contains("colour"));
    model.remove(model.page().get().strange().get(0).path());
    assertTrue(model.page().get().maySave(), this::answer);
  }

  @Test
  void fileThatCannotBeReadIsSaid() {
    model.takeFile(Path.of("none.toml"));
    assertEquals("There is no job file none.toml.", model.said().get());
    shelf.file = "[job\nid = 1";
    model.takeFile(Path.of("job.toml"));
    assertTrue(model.said().get().contains("This is not TOML"), model.said().get());
  }

  @Test
  void openingsAndMetersComeAndGo() {
    fillIn();
    model.addOpening();
    type("openings.D1.from", "1 m");
    type("openings.D1.opening_width", "2 m");
    type("openings.D1.height", "2.1 m");
    model.addMeter("site laser");
    type("meters.site-laser.expanded_uncertainty", "1.5 mm");
    assertTrue(model.page().get().maySave(), this::answer);
    model.addMeter("site laser");
    assertEquals("There is a meter site-laser already.", model.said().get());
    model.remove("openings.D1");
    assertEquals(
        List.of(),
        model.page().get().groups().stream()
            .filter(group -> group.group().id().equals("opening"))
            .toList());
  }

  /** Every field has its texts, and the reader of job files knows every entry it writes. */
  @Test
  void everyFieldIsAnEntryOfAJobFile() {
    fillIn();
    model.addOpening();
    model.addMeter("laser");
    Map<String, String> special =
        Map.of(
            "building.end_line_offset", "0 mm",
            "meters.laser.common", "",
            "sections.tip_distance", "5.6 m",
            "openings.D1.from", "1 m",
            "openings.D1.curtain_width", "",
            "openings.D1.track_width", "",
            "meters.laser.expanded_uncertainty", "4 mm",
            "meters.laser.repeatability", "1 mm",
            "slab.level_points", "slab.A1; seat.A2; slab.@(1.0;2.0)",
            "sections.rafter_length", "2.9 m");
    for (FormPage.Group group : model.page().get().groups()) {
      for (Row row : group.rows()) {
        if (row.text().isEmpty() && row.field().choices().isEmpty()) {
          type(row.field().path(), special.getOrDefault(row.field().path(), usual(row.field())));
        } else if (row.text().isEmpty()) {
          type(row.field().path(), row.field().choices().get(0));
        }
      }
    }
    String wrong =
        model.page().get().groups().stream()
            .flatMap(group -> group.rows().stream())
            .filter(row -> !row.wrong().isEmpty())
            .toList()
            .toString();
    assertTrue(model.page().get().maySave(), answer() + wrong + model.page().get().strange());
  }

  private static String usual(FormField field) {
    return switch (field.shape()) {
      case TEXT, TEXTS -> "1 mm";
      case LENGTH, LIMIT -> "2 m";
      case LENGTHS -> "1 mm; 2 mm";
      case ANGLE -> "10 deg";
      case DAY -> "2026-03-02";
      case WHOLE -> "1";
    };
  }
}
