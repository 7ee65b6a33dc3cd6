package datumpeg.desktop.form;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Fields under a heading; those that a job can do without are folded away until wanted. */
final class GroupBox extends VBox {
  private final List<FieldBox> fields = new ArrayList<>();
  private final @Nullable TitledPane fold;

  /**
   * The group with its fields, not yet filled; what it is given is as {@link FieldBox} takes it.
   */
  GroupBox(
      Group group,
      Words words,
      BiConsumer<FormField, String> type,
      Consumer<String> remove,
      Consumer<String> focus) {
    getStyleClass().add("form-group");
    FlowPane flow = new FlowPane();
    flow.getStyleClass().add("form-fields");
    for (FormField field : group.group().fields()) {
      fields.add(new FieldBox(field, words, type, remove, focus));
    }
    flow.getChildren().addAll(fields);
    if (group.group().optional()) {
      fold = new TitledPane(group.title(), flow);
      fold.setId("form-group-" + group.group().id());
      fold.setAnimated(false);
      fold.setMinWidth(0);
      fold.setExpanded(group.open());
      getChildren().add(fold);
      return;
    }
    fold = null;
    getChildren().addAll(Labels.wrapping(group.title(), "subheading"), flow);
    String table = group.group().table();
    if (!table.isEmpty()) {
      Button away = new Button(words.text("form.remove"));
      away.setId("form-remove-" + group.group().named());
      away.setAccessibleText(words.text("form.remove") + ": " + group.title());
      away.setOnAction(event -> remove.accept(table));
      getChildren().add(away);
    }
  }

  /** Brings the fields to their rows; something wrong is never folded away. */
  void show(Group group, boolean fill) {
    for (int i = 0; i < fields.size(); i++) {
      Row row = group.rows().get(i);
      fields.get(i).show(row, fill);
      if (fold != null && !row.wrong().isEmpty()) {
        fold.setExpanded(true);
      }
    }
  }

  /** Its first field takes the keys. */
  @Override
  public void requestFocus() {
    fields.get(0).requestFocus();
  }
}
