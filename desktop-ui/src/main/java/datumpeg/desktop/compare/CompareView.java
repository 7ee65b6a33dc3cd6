package datumpeg.desktop.compare;

import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.control.Filters;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Groups of jobs compared: the sentences first, then a strip for each group. */
public final class CompareView extends VBox {
  private final Filters<CompareMatter> filters;
  private final VBox sentences = new VBox();
  private final StripList strips = new StripList();
  private final Label key;
  private final ExportButtons buttons;

  public CompareView(CompareViewModel model) {
    Words words = model.words();
    filters =
        new Filters<>(
            "compare",
            words,
            List.of(CompareMatter.values()),
            List.of(CompareMatter.FACTOR, CompareMatter.CHECK),
            told(model));
    getStyleClass().addAll("screen", "compare-screen");
    strips.setId("compare-strips");
    sentences.setId("compare-sentences");
    sentences.getStyleClass().add("changes");
    key = Labels.wrapping(words.text("compare.key"), "hint");
    buttons =
        new ExportButtons(
            words, "compare-exported", new ShownStrips(model, strips, filters::asked));
    VBox body = new VBox(filters, sentences, strips, key, buttons);
    body.getStyleClass().add("trend-body");
    ScrollPane scroll = new ScrollPane(body);
    scroll.getStyleClass().add("page-scroll");
    scroll.setFitToWidth(true);
    filters.within(scroll);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().add(scroll);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private static Filters.Chosen<CompareMatter> told(CompareViewModel model) {
    return new Filters.Chosen<>() {
      @Override
      public void accept(CompareMatter matter, String id) {
        model.choose(matter, id);
      }

      @Override
      public void between(Optional<LocalDate> from, Optional<LocalDate> to) {
        model.between(from, to);
      }
    };
  }

  /** What is compared takes the keys. */
  @Override
  public void requestFocus() {
    filters.requestFocus();
  }

  private void show(ComparePage page) {
    filters.show(page.choices(), page.chosen(), page.from(), page.to());
    sentences
        .getChildren()
        .setAll(page.sentences().stream().map(text -> Labels.wrapping(text, "sentence")).toList());
    boolean drawn = !page.strips().isEmpty();
    strips.setVisible(drawn);
    strips.setManaged(drawn);
    key.setVisible(drawn);
    key.setManaged(drawn);
    buttons.setVisible(drawn);
    buttons.setManaged(drawn);
    strips.show(page);
  }
}
