package datumpeg.bridge.collect;

/**
 * Tells a watcher that values without a target begin to wait, that they wait elsewhere, and that
 * all are stored; how many wait says the standing. One thread.
 */
final class UnassignedNews {
  private final UnassignedStore values;
  private final SessionWatcher watcher;
  private String toldPlace = "";

  UnassignedNews(UnassignedStore values, SessionWatcher watcher) {
    this.values = values;
    this.watcher = watcher;
  }

  void tell() {
    int count = values.waitingCount();
    String place = count == 0 ? "" : WaitingNews.place(values.waitingPlace());
    if (!place.isEmpty() && !place.equals(toldPlace)) {
      watcher.unassignedWaiting(
          count, values.trouble().map(Throwable::getMessage).orElse("") + " " + place);
    } else if (place.isEmpty() && !toldPlace.isEmpty()) {
      watcher.unassignedDrained();
    }
    toldPlace = place;
  }
}
