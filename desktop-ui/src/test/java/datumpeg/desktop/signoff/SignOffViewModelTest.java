package datumpeg.desktop.signoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.bridge.failure.InputException;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.source.ReducedJob;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SignOffViewModelTest {
  private final List<String> asked = new ArrayList<>();
  private String refusal = "";
  private final SignOffViewModel model =
      new SignOffViewModel(
          Words.of(Locale.ROOT),
          new Desk() {
            @Override
            public void sign(String job, String stage, String by) {
              refuse();
              asked.add("sign " + job + " " + stage + " " + by);
            }

            @Override
            public void accept(String job, String stage, String item, Acceptor acceptor) {
              refuse();
              asked.add("accept " + job + " " + stage + " " + item + " " + acceptor.reference());
            }

            @Override
            public void attach(String job, String stage, String by, Path photo) {
              refuse();
              asked.add("attach " + job + " " + stage + " " + by + " " + photo.getFileName());
            }
          },
          (name, work, done, failed) -> {
            try {
              work.run();
              done.run();
            } catch (InputException e) {
              failed.accept(e);
            }
          });

  private void refuse() {
    if (!refusal.isEmpty()) {
      throw new InputException(refusal);
    }
  }

  private static ReducedJob work() {
    ReducedJob work = InventedJobs.reduced();
    List<HoldPoint> points =
        work.job().stages().stream()
            .map(
                stage ->
                    HoldPoint.of(
                        stage, work.findings().stage(stage.id()), List.of(), List.of(), List.of()))
            .toList();
    return new ReducedJob(
        work.job(),
        work.findings(),
        work.earlier(),
        work.strays(),
        points,
        Map.of("arrival", List.of("edge.jpg", "corner.jpg")));
  }

  private void open() {
    model.show(InventedJobs.state(work()));
    model.choose(InventedJobs.ID, "arrival");
  }

  @Test
  void withoutAJobItSaysSo() {
    assertTrue(model.page().get().sentence().startsWith("No job is chosen"));
  }

  @Test
  void openItemsStandFirstAndTheStageMayNotBeSigned() {
    open();
    SignOffPage page = model.page().get();
    assertTrue(page.answer().startsWith("Do not go past this stage:"), page.answer());
    assertFalse(page.maySign());
    assertTrue(page.items().get(0).open());
    assertFalse(page.items().get(page.items().size() - 1).open());
    assertEquals("open", page.stages().get(0).state());
    assertEquals("not begun", page.stages().get(1).state());
    assertTrue(page.cautions().get(page.cautions().size() - 1).contains("local codes"));
  }

  @Test
  void cautionsStandAtTheLift() {
    open();
    model.chooseStage("lift");
    assertEquals(6, model.page().get().cautions().size());
  }

  @Test
  void acceptanceNamesTheItemOfTheShownStage() {
    open();
    String item = model.page().get().items().get(0).key();
    model.accept(item, new Desk.Acceptor("Reed", "letter 7", "trimmed"));
    assertEquals(List.of("accept fernhollow-03 arrival " + item + " letter 7"), asked);
    assertTrue(model.said().get().startsWith("Accepted as it is:"), model.said().get());
  }

  @Test
  void aPhotoIsKeptWithTheShownStageAndThoseKeptAreNamed() {
    open();
    assertEquals(List.of("edge.jpg", "corner.jpg"), model.page().get().photos());
    model.attach(Path.of("somewhere", "base.jpg"), "Reed");
    assertEquals(List.of("attach fernhollow-03 arrival Reed base.jpg"), asked);
    assertTrue(
        model.said().get().startsWith("base.jpg is kept with the stage Arrival."),
        model.said().get());
    model.chooseStage("lift");
    assertEquals(List.of(), model.page().get().photos());
  }

  @Test
  void refusalIsSaidAsItCame() {
    open();
    refusal = "Stage arrival cannot be signed: 3 of 7 items are open.";
    model.sign("Reed");
    assertEquals(refusal, model.said().get());
    assertEquals(List.of(), asked);
  }
}
