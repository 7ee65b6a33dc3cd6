package datumpeg.desktop.findings;

import datumpeg.desktop.control.InSteps;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.text.Words;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;

/** Every outcome of a stage with its numbers, its verdict and its remedy. */
final class OutcomeTable extends TableView<OutcomeRow> {
  /** Beside and between the words of a cell, in heights of its letters. */
  private static final double CELL_PADDING_LETTERS = 1.2;

  /** The letters for which the widths of the columns are given. */
  private static final double USUAL_LETTERS = 15;

  private static final double SCROLL_BAR_LETTERS = 1.2;

  private final Words words;
  private final Consumer<OutcomeRow> open;
  private final Map<TableColumn<OutcomeRow, ?>, Double> usualWidths = new LinkedHashMap<>();
  private double letters = USUAL_LETTERS;
  private final InSteps<OutcomeRow> steps = new InSteps<>(getItems());

  /**
   * @param open is given the outcome whose readings are wanted
   */
  OutcomeTable(Words words, Consumer<OutcomeRow> open) {
    this.words = words;
    this.open = open;
    setOnKeyPressed(this::openByKey);
    setId("outcomes");
    setAccessibleText(words.text("findings.outcomes"));
    setPlaceholder(new Label(words.text("findings.no-outcomes")));
    setRowFactory(table -> new SpokenRow(open, this::letters));
    getColumns()
        .setAll(
            List.of(
                verdict(),
                words("column.check", 168, OutcomeRow::subject),
                number("column.nominal", 114, OutcomeRow::nominal),
                number("column.measured", 114, OutcomeRow::measured),
                number("column.deviation", 152, OutcomeRow::deviation),
                limits(),
                number("column.probability", 118, OutcomeRow::probability),
                words("column.remedy", 260, OutcomeRow::remedy)));
    setColumnResizePolicy(CONSTRAINED_RESIZE_POLICY_LAST_COLUMN);
    widthProperty().addListener(changed -> fit());
  }

  /** Columns are as wide as their letters need; where that is too wide the table is scrolled. */
  private void letters(double pixels) {
    if (pixels != letters) {
      letters = pixels;
      usualWidths.forEach(
          (column, usual) -> {
            column.setMinWidth(usual * pixels / USUAL_LETTERS);
            column.setPrefWidth(usual * pixels / USUAL_LETTERS);
          });
      fit();
    }
  }

  private void fit() {
    double columns = usualWidths.values().stream().mapToDouble(Double::doubleValue).sum();
    double needed = letters * (columns / USUAL_LETTERS + SCROLL_BAR_LETTERS);
    boolean fits = needed <= getWidth();
    if (fits != (getColumnResizePolicy() == CONSTRAINED_RESIZE_POLICY_LAST_COLUMN)) {
      setColumnResizePolicy(
          fits ? CONSTRAINED_RESIZE_POLICY_LAST_COLUMN : UNCONSTRAINED_RESIZE_POLICY);
    }
  }

  void show(List<OutcomeRow> rows) {
    steps.bring(rows);
  }

  private TableColumn<OutcomeRow, String> words(
      String key, double width, Function<OutcomeRow, String> text) {
    TableColumn<OutcomeRow, String> column = column(key, width, text);
    column.setCellFactory(shown -> new WrappingCell(shown));
    return column;
  }

  private TableColumn<OutcomeRow, String> number(
      String key, double width, Function<OutcomeRow, String> text) {
    TableColumn<OutcomeRow, String> column = column(key, width, text);
    column.getStyleClass().add("number-column");
    column.setSortable(false);
    return column;
  }

  private TableColumn<OutcomeRow, String> column(
      String key, double width, Function<OutcomeRow, String> text) {
    TableColumn<OutcomeRow, String> column = new TableColumn<>(words.text(key));
    column.setCellValueFactory(row -> new ReadOnlyStringWrapper(text.apply(row.getValue())));
    wide(column, width);
    return column;
  }

  private void wide(TableColumn<OutcomeRow, ?> column, double width) {
    usualWidths.put(column, width);
    column.setPrefWidth(width);
    column.setMinWidth(width);
  }

  private TableColumn<OutcomeRow, String> limits() {
    TableColumn<OutcomeRow, String> column = number("column.limits", 102, OutcomeRow::limits);
    column.setCellFactory(shown -> new LimitsCell());
    return column;
  }

  private TableColumn<OutcomeRow, OutcomeRow> verdict() {
    TableColumn<OutcomeRow, OutcomeRow> column = new TableColumn<>(words.text("column.verdict"));
    column.setCellValueFactory(row -> new ReadOnlyObjectWrapper<>(row.getValue()));
    column.setComparator((one, other) -> one.standing().compareTo(other.standing()));
    column.setCellFactory(shown -> new VerdictCell());
    wide(column, 172);
    return column;
  }

  private void openByKey(KeyEvent event) {
    OutcomeRow row = getSelectionModel().getSelectedItem();
    if (event.getCode() == KeyCode.ENTER && row != null) {
      open.accept(row);
      event.consume();
    }
  }

  /** Told in one sentence, and opened by a double click. */
  private static final class SpokenRow extends TableRow<OutcomeRow> {
    SpokenRow(Consumer<OutcomeRow> open, DoubleConsumer letters) {
      fontProperty().addListener((property, before, now) -> letters.accept(now.getSize()));
      setOnMouseClicked(
          event -> {
            OutcomeRow row = getItem();
            if (event.getClickCount() == 2 && row != null) {
              open.accept(row);
            }
          });
    }

    @Override
    protected void updateItem(@Nullable OutcomeRow row, boolean empty) {
      super.updateItem(row, empty);
      setAccessibleText(row == null || empty ? "" : row.spoken());
    }
  }

  private static final class VerdictCell extends TableCell<OutcomeRow, OutcomeRow> {
    private final Label word = new Label();
    private final HBox line = new HBox(word);

    VerdictCell() {
      word.getStyleClass().add("verdict-word");
      line.getStyleClass().add("verdict-line");
      line.setAlignment(Pos.CENTER_LEFT);
    }

    @Override
    protected void updateItem(@Nullable OutcomeRow row, boolean empty) {
      OutcomeRow before = getItem();
      super.updateItem(row, empty);
      if (row == null || empty) {
        setGraphic(null);
        return;
      }
      if (getGraphic() == null || before == null || before.standing() != row.standing()) {
        line.getChildren().setAll(new StandingMark(row.standing()), word);
      }
      word.setText(row.verdict());
      setGraphic(line);
    }
  }

  /** Limits, with their source at hand. */
  private static final class LimitsCell extends TableCell<OutcomeRow, String> {
    @Override
    protected void updateItem(@Nullable String text, boolean empty) {
      super.updateItem(text, empty);
      OutcomeRow row = getTableRow() == null ? null : getTableRow().getItem();
      boolean shown = !empty && text != null && row != null;
      setText(shown ? text : null);
      setTooltip(
          shown && row != null && !row.limitSource().isEmpty()
              ? new Tooltip(row.limitSource())
              : null);
    }
  }

  /** A text that wraps in its column, so that the row grows instead of the text being cut. */
  private static final class WrappingCell extends TableCell<OutcomeRow, String> {
    private final Text text = new Text();

    WrappingCell(TableColumn<OutcomeRow, String> column) {
      text.getStyleClass().add("wrapping-text");
      text.wrappingWidthProperty()
          .bind(
              Bindings.createDoubleBinding(
                  () -> column.getWidth() - CELL_PADDING_LETTERS * getFont().getSize(),
                  column.widthProperty(),
                  fontProperty()));
      text.fontProperty().bind(fontProperty());
    }

    @Override
    protected void updateItem(@Nullable String words, boolean empty) {
      super.updateItem(words, empty);
      text.setText(words == null ? "" : words);
      setGraphic(empty || words == null ? null : text);
    }
  }
}
