package datumpeg.desktop.compare;

import datumpeg.desktop.chart.CanvasPen;
import datumpeg.desktop.control.Chooser;
import datumpeg.desktop.control.DayField;
import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.text.Words;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Groups of jobs compared: the sentences first, then a strip for each group. */
public final class CompareView extends VBox {
  private final CompareViewModel model;
  private final Map<CompareMatter, Chooser> choosers = new EnumMap<>(CompareMatter.class);
  private final VBox sentences = new VBox();
  private final Drawing strips = new Drawing("strips");
  private final Label key;
  private final VBox buttons;
  private final DayField from;
  private final DayField to;

  public CompareView(CompareViewModel model) {
    this.model = model;
    Words words = model.words();
    this.from = new DayField("compare-from", words.text("trend.from"), this::period);
    this.to = new DayField("compare-to", words.text("trend.to"), this::period);
    getStyleClass().addAll("screen", "compare-screen");
    strips.setId("compare-strips");
    sentences.setId("compare-sentences");
    sentences.getStyleClass().add("changes");
    key = Labels.wrapping(words.text("compare.key"), "hint");
    buttons = buttons(words, new CompareExport(model, strips));
    VBox body = new VBox(filters(words), sentences, strips, key, buttons);
    body.getStyleClass().add("trend-body");
    ScrollPane scroll = new ScrollPane(body);
    scroll.getStyleClass().add("page-scroll");
    scroll.setFitToWidth(true);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().add(scroll);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private FlowPane filters(Words words) {
    FlowPane filters = new FlowPane();
    filters.getStyleClass().add("filters");
    for (CompareMatter matter : CompareMatter.values()) {
      Chooser chooser =
          new Chooser(
              "compare-" + matter.id(),
              words.text("trend-matter." + matter.id()),
              id -> model.choose(matter, id));
      choosers.put(matter, chooser);
      filters.getChildren().add(chooser);
    }
    filters.getChildren().addAll(from, to);
    return filters;
  }

  private void period() {
    model.between(from.day(), to.day());
  }

  private static VBox buttons(Words words, CompareExport export) {
    Label exported = Labels.vanishing("hint");
    exported.setId("compare-exported");
    exported.textProperty().bind(export.told());
    FlowPane line =
        new FlowPane(
            button(words.text("export.svg"), export::saveSvg),
            button(words.text("export.png"), export::savePng),
            button(words.text("export.csv"), export::saveCsv));
    line.getStyleClass().add("chart-buttons");
    return new VBox(line, exported);
  }

  private static Button button(String name, Runnable action) {
    Button button = new Button(name);
    button.setOnAction(event -> action.run());
    return button;
  }

  /** The choice of what is compared takes the keys. */
  @Override
  public void requestFocus() {
    Chooser first = choosers.get(CompareMatter.FACTOR);
    if (first != null) {
      first.requestFocus();
    }
  }

  private void show(ComparePage page) {
    choosers.forEach(
        (matter, chooser) ->
            chooser.show(
                page.choices().getOrDefault(matter, List.of()),
                page.chosen().getOrDefault(matter, "")));
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
    strips.setStyle(
        String.format(
            java.util.Locale.ROOT,
            "-fx-pref-height: %.1fem; -fx-min-height: %.1fem;",
            StripPainter.heightInLetters(page.strips().size()),
            StripPainter.heightInLetters(page.strips().size())));
    strips.paint(
        page.spoken(),
        (graphics, palette) -> new StripPainter(page, new CanvasPen(graphics, palette)).paint());
  }
}
