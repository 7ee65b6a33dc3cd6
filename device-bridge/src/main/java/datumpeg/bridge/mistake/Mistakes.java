package datumpeg.bridge.mistake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Collects the mistakes of one file, so that a person hears of all of them at once. One thread. */
public final class Mistakes {
  private static final int MOST_PRINTED = 20;

  private final List<Mistake> found = new ArrayList<>();

  public void add(Place place, String sentence) {
    found.add(new Mistake(place, sentence));
  }

  public int count() {
    return found.size();
  }

  public boolean isEmpty() {
    return found.isEmpty();
  }

  /** In the order of the file. */
  public List<Mistake> list() {
    return found.stream()
        .sorted(
            Comparator.<Mistake>comparingInt(mistake -> mistake.place().line())
                .thenComparingInt(mistake -> mistake.place().column()))
        .toList();
  }

  /** One line a mistake, in the order of the file; the rest of a long list is counted. */
  public String text() {
    String lines =
        list().stream().limit(MOST_PRINTED).map(Mistake::text).collect(Collectors.joining("\n"));
    int rest = count() - MOST_PRINTED;
    return rest > 0 ? lines + "\nand " + rest + " more." : lines;
  }
}
