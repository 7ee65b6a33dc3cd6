package datumpeg.bridge.collect;

/** Tells a watcher how many readings wait, when that changes. One thread. */
final class WaitingNews {
  private final ReadingStore store;
  private final SessionWatcher watcher;
  private int toldCount;

  WaitingNews(ReadingStore store, SessionWatcher watcher) {
    this.store = store;
    this.watcher = watcher;
  }

  void tell() {
    int count = store.waitingCount();
    if (count > 0 && count != toldCount) {
      watcher.waiting(
          count,
          store.trouble().map(Throwable::getMessage).orElse("")
              + (store.isWaitingOnDisk()
                  ? ""
                  : " They could not be written beside the record either: keep the program running."));
    } else if (count == 0 && toldCount > 0) {
      watcher.drained();
    }
    toldCount = count;
  }
}
