package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A job whose drawing changes, and job files that are brought in. */
class FormRevisionTest {
  private final FormAtHand form = new FormAtHand();

  @Test
  void revisionTellsInWordsWhatDiffers() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    form.shelf.newest.put("larkrise-01", toml);
    form.model.change("larkrise-01");
    assertEquals("Hay shed, Larkrise Farm: the drawing changes", form.model.page().get().heading());
    assertEquals(List.of(), form.model.page().get().differences());
    assertFalse(form.row("job.id").fixed().isEmpty());
    form.type("building.span", "9100");
    form.type("building.eave_height", "3600");
    form.type("job.slab_by", "");
    form.type("sections.knee_gap", "5 mm");
    form.model.edits().remove("openings.D1");
    assertEquals(
        List.of(
            "Slab laid by: no longer given, was Stonecroft.",
            "Span, slab edge to edge: 9100 mm, was 9 m.",
            "Eave height, slab to knee: written 3600 mm, was 3.6 m; the same size.",
            "Knee gap: 5 mm, was not given.",
            "Opening D1, Wall: no longer given, was end 1."),
        form.model.page().get().differences().stream()
            .sorted(this::inFormOrder)
            .toList()
            .subList(0, 5));
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
    form.shelf.newest.put("larkrise-01", BuildingShapeTest.sample("larkrise-01"));
    form.shelf.strays = List.of("lift, base.A9-base.A10: there is no frame 9.");
    form.model.change("larkrise-01");
    form.type("job.crew", "Violet");
    form.model.store();
    assertEquals(
        "Stored as revision 1 of larkrise-01.\n"
            + "One reading taken before has no place in it any more. It stays in the record and is"
            + " left out of what is found:\n"
            + "lift, base.A9-base.A10: there is no frame 9.",
        form.model.said().get());
  }

  @Test
  void revisionThatCameMeanwhileIsNotOverwrittenUnseen() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    form.shelf.newest.put("larkrise-01", toml);
    form.model.change("larkrise-01");
    form.type("job.crew", "Violet");
    form.shelf.newest.put("larkrise-01", toml.replace("\"9 m\"", "\"9.2 m\""));
    form.model.store();
    assertEquals(List.of(), form.shelf.taken);
    assertTrue(form.model.said().get().startsWith("Nothing was stored"), form.model.said().get());
    assertTrue(
        form.model.page().get().differences().stream().anyMatch(text -> text.contains("was 9.2 m")),
        () -> form.model.page().get().differences().toString());
    form.model.store();
    assertEquals(1, form.shelf.taken.size());
  }

  @Test
  void fileThatIsNotChangedIsStoredByteForByte() throws IOException {
    form.shelf.file = BuildingShapeTest.sample("quarrybend-02");
    form.model.takeFile(Path.of("job.toml"));
    assertEquals("A new job", form.model.page().get().heading());
    assertTrue(form.model.page().get().maySave());
    form.model.store();
    assertEquals(List.of(form.shelf.file), form.shelf.taken);
  }

  @Test
  void fileOfAJobThatIsThereIsItsRevision() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    form.shelf.newest.put("larkrise-01", toml);
    form.shelf.file = toml.replace("\"Amber\"", "\"Violet\"");
    form.model.takeFile(Path.of("job.toml"));
    assertEquals(List.of("Crew: Violet, was Amber."), form.model.page().get().differences());
    form.model.store();
    assertEquals(List.of(form.shelf.file), form.shelf.taken);
  }

  @Test
  void fileWithMistakesFillsTheFormAndTellsThem() {
    form.shelf.file = "[job]\nid = \"x 1\"\ncolour = \"red\"\n[building]\nspan = \"9\"\n";
    form.model.takeFile(Path.of("job.toml"));
    assertTrue(
        form.row("job.id").wrong().contains("letters, digits and -"), form.row("job.id").wrong());
    assertEquals("9", form.row("building.span").text());
    form.fillIn();
    form.type("building.roof", "gable");
    assertEquals(
        1, form.model.page().get().strange().size(), form.model.page().get().strange()::toString);
    assertTrue(form.model.page().get().strange().get(0).sentence().contains("colour"));
    form.model.edits().remove(form.model.page().get().strange().get(0).path());
    assertTrue(form.model.page().get().maySave(), form::answer);
  }

  @Test
  void fileThatCannotBeReadIsSaid() {
    form.model.takeFile(Path.of("none.toml"));
    assertEquals("There is no job file none.toml.", form.model.said().get());
    form.shelf.file = "[job\nid = 1";
    form.model.takeFile(Path.of("job.toml"));
    assertTrue(form.model.said().get().contains("This is not TOML"), form.model.said().get());
  }
}
