package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which of a number of names hang together. One thread, while it is built. */
final class Components {
  private final Map<String, String> parents = new LinkedHashMap<>();
  private final Map<String, Integer> order = new HashMap<>();

  Components(List<String> names) {
    for (String name : names) {
      parents.put(name, name);
      order.put(name, order.size());
    }
  }

  /** Joins two names; the one named first in the list stands for both. */
  void join(String one, String other) {
    String first = head(one);
    String second = head(other);
    if (order.getOrDefault(first, -1) <= order.getOrDefault(second, -1)) {
      parents.put(second, first);
    } else {
      parents.put(first, second);
    }
  }

  /** The name that stands for all that hang together with this one: the first of them. */
  String head(String name) {
    String at = name;
    while (true) {
      String parent = parents.get(at);
      if (parent == null || parent.equals(at)) {
        return at;
      }
      at = parent;
    }
  }

  /** Groups in the order of their first names, each in the order of the list. */
  List<List<String>> groups() {
    Map<String, List<String>> groups = new LinkedHashMap<>();
    for (String name : parents.keySet()) {
      groups.computeIfAbsent(head(name), head -> new ArrayList<>()).add(name);
    }
    return groups.values().stream().map(List::copyOf).toList();
  }
}
