package datumpeg.desktop.trend;

import datumpeg.desktop.control.ChoiceWidth;
import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.SteadyList;
import datumpeg.desktop.text.Words;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** One check of one target across its stages and rounds. */
final class JobTrendView extends VBox {
  /** What stands above and below the drawing needs the rest. */
  private static final double SHARE_OF_THE_SCREEN = 0.62;

  private final TrendViewModel model;
  private final Label title = Labels.wrapping("", "heading");
  private final ComboBox<TrendPage.Choice> checks = new ComboBox<>();
  private final ComboBox<String> targets = new ComboBox<>();
  private final Label sentence = Labels.vanishing("sentence");
  private final TargetChart chart;
  private final Label reading = Labels.wrapping("", "chart-reading");
  private final VBox changes = new VBox();
  private final ExportButtons buttons;
  private boolean showing;

  JobTrendView(TrendViewModel model) {
    this.model = model;
    getStyleClass().add("trend-body");
    sentence.setId("trend-sentence");
    chart = new TargetChart(model.words(), model.page().get());
    chart.setId("trend-points");
    reading.setId("trend-reading");
    String keys = model.words().text("trend.target-keys");
    chart.onRead(told -> reading.setText(told.isEmpty() ? keys : told));
    changes.getStyleClass().add("changes");
    buttons = new ExportButtons(model.words(), "trend-of-job-exported", shown());
    VBox body =
        new VBox(title, choosers(model.words()), sentence, chart, reading, changes, buttons);
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

  private HBox choosers(Words words) {
    checks.setId("trend-check");
    checks.setConverter(new ChoiceName());
    checks.setVisibleRowCount(12);
    targets.setId("trend-target");
    targets.setVisibleRowCount(12);
    checks
        .valueProperty()
        .addListener(
            (property, before, choice) -> {
              if (!showing && choice != null) {
                model.chooseCheck(choice.id());
              }
            });
    targets
        .valueProperty()
        .addListener(
            (property, before, target) -> {
              if (!showing && target != null) {
                model.chooseTarget(target);
              }
            });
    Label check = new Label(words.text("trend.check"));
    check.setLabelFor(checks);
    checks.setAccessibleText(words.text("trend.check"));
    Label target = new Label(words.text("trend.target"));
    target.setLabelFor(targets);
    targets.setAccessibleText(words.text("trend.target"));
    ChoiceWidth.follow(checks, check);
    ChoiceWidth.follow(targets, target);
    HBox line = new HBox(check, checks, target, targets);
    line.getStyleClass().add("choosers");
    line.managedProperty().bind(checks.disabledProperty().not());
    line.visibleProperty().bind(line.managedProperty());
    return line;
  }

  private ExportButtons.Shown shown() {
    return new ShownTrend(
        chart,
        () -> {
          TrendPage page = model.page().get();
          return () -> TargetTable.csv(page, model.words());
        });
  }

  /** The choice of a check takes the keys. */
  @Override
  public void requestFocus() {
    checks.requestFocus();
  }

  private void show(TrendPage page) {
    showing = true;
    title.setText(page.title());
    sentence.setText(page.sentence());
    checks.setDisable(page.checks().isEmpty());
    SteadyList.bring(
        checks,
        page.checks(),
        page.checks().stream()
            .filter(choice -> choice.id().equals(page.check()))
            .findFirst()
            .orElse(null));
    SteadyList.bring(targets, page.targets(), page.target());
    boolean drawn = !page.points().isEmpty();
    chart.setVisible(drawn);
    chart.setManaged(drawn);
    buttons.setVisible(drawn);
    buttons.setManaged(drawn);
    reading.setVisible(drawn);
    reading.setManaged(drawn);
    chart.show(page);
    changes
        .getChildren()
        .setAll(page.changes().stream().map(text -> Labels.wrapping(text, "change")).toList());
    showing = false;
  }

  private static final class ChoiceName extends StringConverter<TrendPage.Choice> {
    @Override
    public String toString(TrendPage.@Nullable Choice choice) {
      return choice == null ? "" : choice.name();
    }

    /** The box is not editable: nothing is ever read back. */
    @Override
    public TrendPage.Choice fromString(String name) {
      throw new UnsupportedOperationException("a check is chosen, not typed: " + name);
    }
  }
}
