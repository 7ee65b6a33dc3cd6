package datumpeg.desktop.form;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Rows of fields, each with its name and a way to take it away, and a line that adds one. */
final class TableBox extends VBox {
  private final Words words;
  private final FormActs acts;
  private final String key;
  private final VBox lines = new VBox();
  private final TextField name = new TextField();
  private final List<FieldBox> fields = new ArrayList<>();
  private FormTable table;
  private List<String> shown = List.of();

  /** A table before its rows. */
  TableBox(Group group, Words words, FormActs acts) {
    this.words = words;
    this.acts = acts;
    this.table = group.group().rows();
    this.key = "form.table." + table.kind().name().toLowerCase(Locale.ROOT);
    getStyleClass().add("form-table");
    lines.getStyleClass().add("form-table");
    lines.setId("form-table-" + table.path().replace('.', '-'));
    String help = words.text(key + ".help");
    getChildren().addAll(Labels.wrapping(help, "field-told"), lines, adding(group.title()));
  }

  private FlowPane adding(String title) {
    name.setId(lines.getId() + "-name");
    name.setPromptText(words.text(key + ".prompt"));
    name.setAccessibleText(words.text(key + ".name") + ": " + title);
    name.setPrefColumnCount(table.kind().isNamed() ? 8 : 20);
    name.setOnAction(event -> add());
    Button add = button(words.text(key + ".add"), "-add", title);
    add.setOnAction(event -> add());
    FlowPane line = new FlowPane(name, add);
    line.getStyleClass().add("chart-buttons");
    if (table.kind() == FormTable.Kind.CORNERS) {
      Button rectangle = button(words.text("form.rectangle"), "-rectangle", title);
      rectangle.setOnAction(event -> acts.edits().beginWithRectangle(table));
      line.getChildren().add(rectangle);
    }
    line.setMinWidth(0); // a long button wraps instead of pushing all out of the fold
    line.getChildren()
        .forEach(node -> ((Region) node).maxWidthProperty().bind(line.widthProperty()));
    return line;
  }

  private Button button(String text, String end, String of) {
    Button button = new Button(text);
    button.setId(lines.getId() + end);
    button.setAccessibleText(text + ": " + of);
    button.setWrapText(true);
    button.setMinHeight(USE_PREF_SIZE);
    return button;
  }

  private void add() {
    acts.edits().addRow(table, name.getText());
    name.clear();
  }

  /**
   * Brings the table to its rows.
   *
   * @param rows those of its fields, in order
   * @param fill whether their texts are shown anew
   */
  void show(FormTable newTable, List<Row> rows, boolean fill) {
    table = newTable;
    List<String> wanted = table.rows().stream().map(FormTable.Row::path).toList();
    List<String> before = shown;
    boolean other = !wanted.equals(before);
    if (other) {
      shown = wanted;
      fields.clear();
      lines.getChildren().setAll(table.rows().stream().map(this::line).toList());
    }
    for (int i = 0; i < fields.size(); i++) {
      fields.get(i).show(rows.get(i), fill || other);
    }
    if (wanted.size() > before.size() && !fill) {
      focusNew(before);
    }
  }

  /** The first field of the first row that was not there takes the keys. */
  private void focusNew(List<String> before) {
    int field = 0;
    for (FormTable.Row row : table.rows()) {
      if (!before.contains(row.path())) {
        fields.get(field).requestFocus();
        return;
      }
      field += row.fields().size();
    }
  }

  private Pane line(FormTable.Row row) {
    Button away = button(words.text("form.remove"), "-remove-" + row.name(), row.name());
    away.setOnAction(event -> acts.edits().remove(row.path()));
    return table.kind().isNamed() ? named(row, away) : alone(row, away);
  }

  private FlowPane named(FormTable.Row row, Button away) {
    Label called = new Label(row.name());
    called.getStyleClass().add("row-name");
    FlowPane line = new FlowPane(called);
    line.getStyleClass().add("form-fields");
    line.setRowValignment(VPos.CENTER);
    for (FormField field : row.fields()) {
      line.getChildren().add(box(field));
    }
    if (table.kind().isOrdered()) {
      Button up = button(words.text("form.up"), "-up-" + row.name(), row.name());
      up.setOnAction(event -> acts.edits().raise(table, row));
      line.getChildren().add(up);
    }
    line.getChildren().add(away);
    return line;
  }

  private HBox alone(FormTable.Row row, Button away) {
    FieldBox field = box(row.fields().get(0));
    HBox.setHgrow(field, Priority.ALWAYS);
    HBox line = new HBox(field, away);
    line.getStyleClass().add("form-row");
    return line;
  }

  private FieldBox box(FormField field) {
    FieldBox box = new FieldBox(field, words, acts);
    box.getStyleClass().add("cell-field");
    fields.add(box);
    return box;
  }

  /** The field for the next name takes the keys. */
  @Override
  public void requestFocus() {
    name.requestFocus();
  }
}
