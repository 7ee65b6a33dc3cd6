package datumpeg.analysis.remedy;

import datumpeg.analysis.remedy.Shifting.Bay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The largest sets of frames of a row that can stay where they are while the others are moved. */
final class StayingFrames {
  private final List<Bay> bays;
  private final Optional<Bay> overall;
  private final int frames;

  StayingFrames(List<Bay> bays, Optional<Bay> overall) {
    this.bays = bays;
    this.overall = overall;
    this.frames = bays.size() + 1;
  }

  /** The largest sets, at most so many, in ascending order of their frames. */
  List<List<Integer>> most(int count) {
    int largest = 0;
    int[][] longest = new int[frames][];
    for (int last = 0; last < frames; last++) {
      longest[last] = longestTo(last);
      for (int first = 0; first <= last; first++) {
        if (holdsOverall(first, last)) {
          largest = Math.max(largest, longest[last][first]);
        }
      }
    }
    List<List<Integer>> found = new ArrayList<>();
    for (int last = 0; last < frames && largest > 0; last++) {
      for (int first = 0; first <= last; first++) {
        if (longest[last][first] == largest && holdsOverall(first, last)) {
          backward(longest, last, first, largest - 1, new ArrayList<>(List.of(last)), found, count);
        }
      }
    }
    return found;
  }

  /** By first frame, the most frames that can stay from it to the last; 0 if not both can. */
  private int[] longestTo(int last) {
    int[] longest = new int[last + 1];
    for (int first = last; first >= 0; first--) {
      longest[first] = first == last ? 1 : longestBetween(first, last);
    }
    return longest;
  }

  private int longestBetween(int first, int last) {
    int[] most = new int[last + 1];
    most[first] = 1;
    for (int next = first + 1; next <= last; next++) {
      for (int before = first; before < next; before++) {
        if (most[before] > 0 && canStay(before, next)) {
          most[next] = Math.max(most[next], most[before] + 1);
        }
      }
    }
    return most[last];
  }

  private void backward(
      int[][] longest,
      int at,
      int first,
      int left,
      List<Integer> staying,
      List<List<Integer>> found,
      int count) {
    if (found.size() >= count) {
      return;
    }
    if (left == 0) {
      if (at == first) {
        found.add(staying.stream().sorted().toList());
      }
      return;
    }
    for (int before = first; before < at; before++) {
      if (longest[before][first] == left && canStay(before, at)) {
        staying.add(before);
        backward(longest, before, first, left - 1, staying, found, count);
        staying.remove(staying.size() - 1);
      }
    }
  }

  /** Whether the bays between two frames that stay can be made right, the frames between free. */
  private boolean canStay(int from, int to) {
    return new Bay(sum(from, to, 0), sum(from, to, -1), sum(from, to, 1)).holds(sum(from, to, 0));
  }

  /**
   * Whether the overall length can be, with the frames before the first and after the last free.
   */
  private boolean holdsOverall(int first, int last) {
    if (overall.isEmpty()) {
      return true;
    }
    double middle = sum(first, last, 0);
    double most = middle + sum(0, first, 1) + sum(last, frames - 1, 1);
    double least = middle + sum(0, first, -1) + sum(last, frames - 1, -1);
    return least <= overall.get().mostMetres() && most >= overall.get().leastMetres();
  }

  /** Sum over the bays between two frames of the deviations (0), least (-1) or most (1). */
  private double sum(int from, int to, int what) {
    double sum = 0;
    for (Bay bay : bays.subList(from, to)) {
      sum += what == 0 ? bay.deviationMetres() : what < 0 ? bay.leastMetres() : bay.mostMetres();
    }
    return sum;
  }
}
