package datumpeg.bridge.jobfile;

import datumpeg.bridge.toml.TomlNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Finds and changes what stands at a path of a tree of values. A path is as mistakes name it: keys
 * joined by points, items of a list counted from 1, such as {@code slab.corners.A1[2]}.
 */
final class DraftTree {
  private static final TomlNode BLANK = new TomlNode.Text("");

  private DraftTree() {}

  private static List<String> steps(String path) {
    return List.of(path.replace("[", ".[").split("\\.", -1));
  }

  /** The place of an item in its list, from 0; negative for a key. */
  private static int place(String step) {
    boolean item = step.matches("\\[[0-9]{1,4}]");
    return item ? Integer.parseInt(step.substring(1, step.length() - 1)) - 1 : -1;
  }

  static Optional<TomlNode> find(TomlNode.Entries file, String path) {
    TomlNode at = file;
    for (String step : steps(path)) {
      @Nullable TomlNode next = next(at, step);
      if (next == null) {
        return Optional.empty();
      }
      at = next;
    }
    return Optional.of(at);
  }

  private static @Nullable TomlNode next(TomlNode at, String step) {
    int place = place(step);
    if (place >= 0) {
      return at instanceof TomlNode.Items items && place < items.items().size()
          ? items.items().get(place)
          : null;
    }
    return at instanceof TomlNode.Entries table ? table.entries().get(step) : null;
  }

  /**
   * The tree with another value at a path. A table that loses its last entry goes too; a list keeps
   * its length, and has a blank text in place of an item that is taken away.
   */
  static TomlNode.Entries changed(TomlNode.Entries file, String path, @Nullable TomlNode value) {
    @Nullable TomlNode changed = changed(file, steps(path), value);
    return changed instanceof TomlNode.Entries entries ? entries : TomlNode.Entries.NONE;
  }

  private static @Nullable TomlNode changed(
      @Nullable TomlNode at, List<String> steps, @Nullable TomlNode value) {
    if (steps.isEmpty()) {
      return value;
    }
    List<String> rest = steps.subList(1, steps.size());
    int place = place(steps.get(0));
    if (place >= 0) {
      return item(at, place, rest, value);
    }
    TomlNode.Entries table = at instanceof TomlNode.Entries known ? known : TomlNode.Entries.NONE;
    String key = steps.get(0);
    @Nullable TomlNode inner = changed(table.entries().get(key), rest, value);
    TomlNode.Entries after = inner == null ? table.without(key) : table.with(key, inner);
    return after.entries().isEmpty() ? null : after;
  }

  private static TomlNode item(
      @Nullable TomlNode at, int place, List<String> rest, @Nullable TomlNode value) {
    List<TomlNode> items =
        new ArrayList<>(at instanceof TomlNode.Items list ? list.items() : List.of());
    while (items.size() <= place) {
      items.add(BLANK);
    }
    @Nullable TomlNode inner = changed(items.get(place), rest, value);
    items.set(place, inner == null ? BLANK : inner);
    return new TomlNode.Items(items);
  }

  /** The table with an entry one place nearer to its begin; the same if it is the first. */
  static TomlNode.Entries raised(TomlNode.Entries table, String key) {
    List<String> keys = new ArrayList<>(table.entries().keySet());
    int place = keys.indexOf(key);
    if (place < 1) {
      return table;
    }
    keys.add(place - 1, keys.remove(place));
    Map<String, TomlNode> ordered = new LinkedHashMap<>();
    keys.forEach(
        each -> {
          @Nullable TomlNode value = table.entries().get(each);
          if (value != null) {
            ordered.put(each, value);
          }
        });
    return new TomlNode.Entries(ordered);
  }
}
