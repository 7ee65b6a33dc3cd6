package datumpeg.desktop.form;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Fields under a heading; those that a job can do without are folded away until wanted. */
final class GroupBox extends VBox {
  private final List<FieldBox> fields = new ArrayList<>();
  private final Label wrong = Labels.vanishing("field-wrong");
  private final @Nullable TitledPane fold;
  private final @Nullable TableBox table;

  /** The group with its fields, not yet filled. */
  GroupBox(Group group, Words words, FormActs acts) {
    FormGroup of = group.group();
    getStyleClass().add("form-group");
    wrong.setId("form-group-" + of.id() + of.named() + "-wrong");
    table = of.rows().kind() == FormTable.Kind.NONE ? null : new TableBox(group, words, acts);
    for (FormField field : of.fields()) {
      fields.add(new FieldBox(field, words, acts));
    }
    VBox content = content(of, words);
    if (of.optional()) {
      fold = new TitledPane(group.title(), content);
      fold.setId("form-group-" + of.id() + of.named());
      fold.setAnimated(false);
      fold.setMinWidth(0);
      fold.setExpanded(group.open());
      getChildren().add(fold);
      return;
    }
    fold = null;
    getChildren().addAll(Labels.wrapping(group.title(), "subheading"), content);
    if (!of.table().isEmpty()) {
      Button away = new Button(words.text("form.remove"));
      away.setId("form-remove-" + of.named());
      away.setAccessibleText(words.text("form.remove") + ": " + group.title());
      away.setOnAction(event -> acts.edits().remove(of.table()));
      getChildren().add(away);
    }
  }

  private VBox content(FormGroup of, Words words) {
    VBox content = new VBox();
    content.getStyleClass().add("form-group");
    if (of.isOfLimits()) {
      content.getChildren().add(Labels.wrapping(help(words), "field-told"));
      content.getChildren().addAll(fields);
    } else if (!fields.isEmpty()) {
      FlowPane flow = new FlowPane();
      flow.getStyleClass().add("form-fields");
      flow.getChildren().addAll(fields);
      content.getChildren().add(flow);
    }
    if (table != null) {
      content.getChildren().addAll(wrong, table);
    }
    return content;
  }

  /** How a limit can be typed, with examples in the user's units. */
  private static String help(Words words) {
    boolean metric = words.figures().lengths().display() == LengthDisplay.METRIC;
    String examples = words.text(metric ? "form.limit.help.metric" : "form.limit.help.feet");
    return words.text("form.limit.help", (Object[]) examples.split(";", -1));
  }

  /** Brings the fields to their rows; something wrong is never folded away. */
  void show(Group group, boolean fill) {
    for (int i = 0; i < fields.size(); i++) {
      fields.get(i).show(group.rows().get(i), fill);
    }
    if (table != null) {
      List<Row> rows = group.rows().subList(fields.size(), group.rows().size());
      table.show(group.group().rows(), rows, fill);
    }
    wrong.setText(group.wrong());
    boolean isWrong =
        !group.wrong().isEmpty() || group.rows().stream().anyMatch(row -> !row.wrong().isEmpty());
    if (fold != null && isWrong) {
      fold.setExpanded(true);
    }
  }

  /** Its first field takes the keys. */
  @Override
  public void requestFocus() {
    if (!fields.isEmpty()) {
      fields.get(0).requestFocus();
    } else if (table != null) {
      table.requestFocus();
    }
  }
}
