package datumpeg.desktop.form;

import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** The groups of the form, one below the other; what stays keeps the keys. */
final class GroupList extends VBox {
  private final Words words;
  private final FormActs acts;
  private final Node adding;
  private final Map<String, GroupBox> boxes = new HashMap<>();
  private List<String> shown = List.of();
  private int filled = -1;

  /**
   * No group yet.
   *
   * @param adding stands before the groups that a job can do without
   */
  GroupList(Words words, FormActs acts, Node adding) {
    this.words = words;
    this.acts = acts;
    this.adding = adding;
    getStyleClass().add("form-groups");
  }

  void show(FormPage page) {
    boolean fill = page.filled() != filled;
    List<String> keys = page.groups().stream().map(GroupList::key).toList();
    List<String> before = shown;
    shown = keys;
    filled = page.filled();
    if (!keys.equals(before)) {
      boxes.keySet().retainAll(keys);
      List<Node> wanted = new ArrayList<>();
      for (Group group : page.groups()) {
        if (group.group().optional() && !wanted.contains(adding)) {
          wanted.add(adding);
        }
        wanted.add(box(group));
      }
      bring(wanted);
    }
    for (Group group : page.groups()) {
      boolean added = !before.contains(key(group));
      box(group).show(group, fill || added);
      if (added && !fill && !before.isEmpty()) {
        box(group).requestFocus();
      }
    }
  }

  /** What stays is not touched, so that it keeps the keys. */
  private void bring(List<Node> wanted) {
    getChildren().retainAll(wanted);
    for (int i = 0; i < wanted.size(); i++) {
      if (i >= getChildren().size() || getChildren().get(i) != wanted.get(i)) {
        getChildren().add(i, wanted.get(i));
      }
    }
  }

  private GroupBox box(Group group) {
    return boxes.computeIfAbsent(key(group), key -> new GroupBox(group, words, acts));
  }

  private static String key(Group group) {
    return group.group().id() + " " + group.group().named();
  }

  /** The first field takes the keys. */
  @Override
  public void requestFocus() {
    if (!getChildren().isEmpty()) {
      getChildren().get(0).requestFocus();
    }
  }
}
