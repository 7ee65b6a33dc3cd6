package datumpeg.bridge.collect;

/** Tells a watcher how many readings wait, when that changes. One thread. */
final class WaitingNews {
  private final ReadingStore store;
  private final SessionWatcher watcher;
  private int toldCount;
  private boolean toldOnDisk;

  WaitingNews(ReadingStore store, SessionWatcher watcher) {
    this.store = store;
    this.watcher = watcher;
  }

  void tell() {
    int count = store.waitingCount();
    boolean onDisk = store.isWaitingOnDisk();
    if (count > 0 && (count != toldCount || onDisk != toldOnDisk)) {
      watcher.waiting(
          count,
          store.trouble().map(Throwable::getMessage).orElse("")
              + (onDisk
                  ? " They are kept beside the captures too."
                  : " They could not be written beside the captures either: keep the program"
                      + " running."));
    } else if (count == 0 && toldCount > 0) {
      watcher.drained();
    }
    toldCount = count;
    toldOnDisk = onDisk;
  }
}
