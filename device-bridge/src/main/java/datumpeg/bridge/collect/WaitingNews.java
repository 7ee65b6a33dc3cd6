package datumpeg.bridge.collect;

import java.nio.file.Path;
import java.util.Optional;

/** Tells a watcher how many readings wait, when that changes. One thread. */
final class WaitingNews {
  private final ReadingStore store;
  private final SessionWatcher watcher;
  private int toldCount;
  private String toldPlace = "";

  WaitingNews(ReadingStore store, SessionWatcher watcher) {
    this.store = store;
    this.watcher = watcher;
  }

  void tell() {
    int count = store.waitingCount();
    String place = place();
    if (count > 0 && (count != toldCount || !place.equals(toldPlace))) {
      watcher.waiting(count, store.trouble().map(Throwable::getMessage).orElse("") + " " + place);
    } else if (count == 0 && toldCount > 0) {
      watcher.drained();
    }
    toldCount = count;
    toldPlace = place;
  }

  private String place() {
    return place(store.waitingPlace());
  }

  /** Where what waits is kept, and for how long. */
  static String place(Optional<Path> kept) {
    return kept.map(file -> "They are kept in " + file + " too" + SpareFolders.endOf(file) + ".")
        .orElse("They could not be written to any disk: keep the program running.");
  }
}
