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

/**
 * Fields under a heading; those that a job can do without are folded away until wanted, and are
 * only made when they are: most of a form's fields never are.
 */
final class GroupBox extends VBox {
  private final FormGroup of;
  private final Words words;
  private final FormActs acts;
  private final List<FieldBox> fields = new ArrayList<>();
  private final Label wrong = Labels.vanishing("field-wrong");
  private final @Nullable TitledPane fold;
  private @Nullable TableBox table;
  private Group latest;
  private boolean made;

  /** The group, not yet filled. */
  GroupBox(Group group, Words words, FormActs acts) {
    this.of = group.group();
    this.words = words;
    this.acts = acts;
    this.latest = group;
    getStyleClass().add("form-group");
    wrong.setId("form-group-" + of.id() + of.named() + "-wrong");
    fold = of.optional() ? folded(group) : null;
    if (fold == null) {
      getChildren().addAll(Labels.wrapping(group.title(), "subheading"), made());
      removable(group);
    } else {
      getChildren().add(fold);
      unfoldIfOpen();
    }
  }

  private TitledPane folded(Group group) {
    TitledPane pane = new TitledPane(group.title(), new VBox());
    pane.setId("form-group-" + of.id() + of.named());
    pane.setAnimated(false);
    pane.setMinWidth(0);
    pane.setExpanded(group.open());
    pane.expandedProperty().addListener((property, before, now) -> unfoldIfOpen());
    return pane;
  }

  private void removable(Group group) {
    if (!of.table().isEmpty()) {
      Button away = new Button(words.text("form.remove"));
      away.setId("form-remove-" + of.named());
      away.setAccessibleText(words.text("form.remove") + ": " + group.title());
      away.setOnAction(event -> acts.edits().remove(of.table()));
      getChildren().add(away);
    }
  }

  private void unfoldIfOpen() {
    if (fold != null && fold.isExpanded() && !made) {
      fold.setContent(made());
      bring(latest, true);
    }
  }

  private VBox made() {
    made = true;
    table = of.rows().kind() == FormTable.Kind.NONE ? null : new TableBox(latest, words, acts);
    for (FormField field : of.fields()) {
      fields.add(new FieldBox(field, words, acts));
    }
    return content();
  }

  private VBox content() {
    VBox content = new VBox();
    content.getStyleClass().add("form-group");
    if (of.isOfLimits()) {
      content.getChildren().add(Labels.wrapping(help(), "field-told"));
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
  private String help() {
    boolean metric = words.figures().lengths().display() == LengthDisplay.METRIC;
    String examples = words.text(metric ? "form.limit.help.metric" : "form.limit.help.feet");
    return words.text("form.limit.help", (Object[]) examples.split(";", -1));
  }

  /** Brings the fields to their rows; something wrong is never folded away. */
  void show(Group group, boolean fill) {
    latest = group;
    if (made) {
      bring(group, fill);
    }
    boolean isWrong =
        !group.wrong().isEmpty() || group.rows().stream().anyMatch(row -> !row.wrong().isEmpty());
    if (fold != null && isWrong) {
      fold.setExpanded(true);
    }
  }

  private void bring(Group group, boolean fill) {
    for (int i = 0; i < fields.size(); i++) {
      fields.get(i).show(group.rows().get(i), fill);
    }
    TableBox rowsBelow = table;
    if (rowsBelow != null) {
      List<Row> rows = group.rows().subList(fields.size(), group.rows().size());
      rowsBelow.show(group.group().rows(), rows, fill);
    }
    wrong.setText(group.wrong());
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
