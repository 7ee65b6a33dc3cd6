package datumpeg.desktop.trend;

import datumpeg.desktop.chart.LongChart;
import datumpeg.desktop.control.Chooser;
import datumpeg.desktop.control.DayField;
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

/** One check over all jobs: what is asked, the chart, what it says. */
final class JobsTrendView extends VBox {
  private static final double SHARE_OF_THE_SCREEN = 0.55;

  private final JobsTrendViewModel model;
  private final Words words;
  private final Map<TrendMatter, Chooser> choosers = new EnumMap<>(TrendMatter.class);
  private final DayField from;
  private final DayField to;
  private final LongChart chart = new LongChart();
  private final Label reading = Labels.wrapping("", "chart-reading");
  private final VBox sentences = new VBox();
  private final TrendExport export;

  JobsTrendView(JobsTrendViewModel model) {
    this.model = model;
    this.words = model.words();
    this.export = new TrendExport(model, chart);
    this.from = new DayField("jobs-from", words.text("trend.from"), this::period);
    this.to = new DayField("jobs-to", words.text("trend.to"), this::period);
    getStyleClass().add("trend-body");
    chart.setId("jobs-points");
    reading.setId("jobs-reading");
    chart.onRead(told -> reading.setText(told.isEmpty() ? words.text("trend.chart-keys") : told));
    sentences.getStyleClass().add("changes");
    Label exported = Labels.vanishing("hint");
    exported.setId("trend-exported");
    exported.textProperty().bind(export.told());
    VBox body = new VBox(filters(), chart, reading, buttons(), exported, sentences);
    body.getStyleClass().add("trend-body");
    ScrollPane scroll = new ScrollPane(body);
    scroll.getStyleClass().add("page-scroll");
    scroll.setFitToWidth(true);
    chart.prefHeightProperty().bind(scroll.heightProperty().multiply(SHARE_OF_THE_SCREEN));
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().add(scroll);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private FlowPane filters() {
    FlowPane filters = new FlowPane();
    filters.getStyleClass().add("filters");
    for (TrendMatter matter : TrendMatter.values()) {
      Chooser chooser =
          new Chooser(
              "jobs-" + matter.id(),
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

  private FlowPane buttons() {
    FlowPane buttons =
        new FlowPane(
            button("trend.earlier", () -> chart.move(-0.5)),
            button("trend.later", () -> chart.move(0.5)),
            button("trend.closer", () -> chart.zoom(2)),
            button("trend.wider", () -> chart.zoom(0.5)),
            button("trend.show-all", chart::showAll),
            button("export.svg", export::saveSvg),
            button("export.png", export::savePng),
            button("export.csv", export::saveCsv));
    buttons.getStyleClass().add("chart-buttons");
    return buttons;
  }

  private Button button(String key, Runnable action) {
    Button button = new Button(words.text(key));
    button.setOnAction(event -> action.run());
    return button;
  }

  /** The choice of a check takes the keys. */
  @Override
  public void requestFocus() {
    chooser(TrendMatter.CHECK).requestFocus();
  }

  private Chooser chooser(TrendMatter matter) {
    Chooser chooser = choosers.get(matter);
    if (chooser == null) {
      throw new IllegalStateException(matter + " has no list");
    }
    return chooser;
  }

  private void show(JobsTrendPage page) {
    choosers.forEach(
        (matter, chooser) ->
            chooser.show(
                page.choices().getOrDefault(matter, List.of()),
                page.chosen().getOrDefault(matter, "")));
    boolean drawn = page.points().size() > 0;
    chart.setVisible(drawn);
    chart.setManaged(drawn);
    reading.setVisible(drawn);
    reading.setManaged(drawn);
    chart.show(page.points(), page.labels(), page.spoken());
    sentences.getChildren().clear();
    page.sentences()
        .forEach(text -> sentences.getChildren().add(Labels.wrapping(text, "sentence")));
    page.signals().forEach(text -> sentences.getChildren().add(Labels.wrapping(text, "change")));
  }
}
