package datumpeg.desktop.trend;

import datumpeg.desktop.chart.LongChart;
import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.control.Filters;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** One check over all jobs: what is asked, the chart, what it says. */
final class JobsTrendView extends VBox {
  private static final double SHARE_OF_THE_SCREEN = 0.55;

  private final Words words;
  private final Filters<TrendMatter> filters;
  private final LongChart chart = new LongChart();
  private final Label reading = Labels.wrapping("", "chart-reading");
  private final VBox sentences = new VBox();

  JobsTrendView(JobsTrendViewModel model) {
    this.words = model.words();
    this.filters =
        new Filters<>(
            "jobs", words, List.of(TrendMatter.values()), List.of(TrendMatter.CHECK), told(model));
    getStyleClass().add("trend-body");
    chart.setId("jobs-points");
    reading.setId("jobs-reading");
    chart.onRead(told -> reading.setText(told.isEmpty() ? words.text("trend.chart-keys") : told));
    sentences.getStyleClass().add("changes");
    ExportButtons export =
        new ExportButtons(words, "trend-exported", new ShownTrend(chart, () -> csv(model)));
    export.putFirst(
        button("trend.earlier", () -> chart.move(-0.5)),
        button("trend.later", () -> chart.move(0.5)),
        button("trend.closer", () -> chart.zoom(2)),
        button("trend.wider", () -> chart.zoom(0.5)),
        button("trend.show-all", chart::showAll));
    VBox body = new VBox(filters, chart, reading, export, sentences);
    body.getStyleClass().add("trend-body");
    ScrollPane scroll = new ScrollPane(body);
    scroll.getStyleClass().add("page-scroll");
    scroll.setFitToWidth(true);
    filters.within(scroll);
    chart.prefHeightProperty().bind(scroll.heightProperty().multiply(SHARE_OF_THE_SCREEN));
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().add(scroll);
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private static Filters.Chosen<TrendMatter> told(JobsTrendViewModel model) {
    return new Filters.Chosen<>() {
      @Override
      public void accept(TrendMatter matter, String id) {
        model.choose(matter, id);
      }

      @Override
      public void between(Optional<LocalDate> from, Optional<LocalDate> to) {
        model.between(from, to);
      }
    };
  }

  private static Supplier<String> csv(JobsTrendViewModel model) {
    return model.page().get().csv()::text;
  }

  private Button button(String key, Runnable action) {
    Button button = new Button(words.text(key));
    button.setOnAction(event -> action.run());
    return button;
  }

  /** The choice of a check takes the keys. */
  @Override
  public void requestFocus() {
    filters.requestFocus();
  }

  private void show(JobsTrendPage page) {
    filters.show(page.choices(), page.chosen(), page.from(), page.to());
    boolean drawn = page.points().size() > 0;
    chart.setVisible(drawn);
    chart.setManaged(drawn);
    reading.setVisible(drawn);
    reading.setManaged(drawn);
    chart.show(page.points(), page.labels(), filters.asked() + ". " + page.spoken());
    sentences.getChildren().clear();
    page.sentences()
        .forEach(text -> sentences.getChildren().add(Labels.wrapping(text, "sentence")));
    page.signals().forEach(text -> sentences.getChildren().add(Labels.wrapping(text, "change")));
  }
}
