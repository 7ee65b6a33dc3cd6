package datumpeg.bridge.collect;

import datumpeg.bridge.collect.SessionEvent.Away;
import datumpeg.bridge.collect.SessionEvent.Ended;
import datumpeg.bridge.collect.SessionEvent.Lost;
import datumpeg.bridge.collect.SessionEvent.Returned;
import datumpeg.bridge.collect.SessionEvent.Silent;
import datumpeg.bridge.link.LinkLostException;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which links of a session are there, and what is said of those that come and go. One thread. */
final class LinkPresence {
  private final MeterFeed feed;
  private final SessionWatcher watcher;
  private final Set<String> open = new HashSet<>();
  private final Set<String> away = new HashSet<>();
  private final Set<String> seen = new HashSet<>();
  private @Nullable LinkLostException lastLoss;

  LinkPresence(MeterFeed feed, SessionWatcher watcher) {
    this.feed = feed;
    this.watcher = watcher;
  }

  void add(String name) {
    open.add(name);
    seen.add(name);
  }

  /** A link that may be there later only. */
  void expect(String name) {
    away.add(name);
  }

  boolean isAnyOpen() {
    return !open.isEmpty();
  }

  boolean isAnyAway() {
    return !away.isEmpty();
  }

  int openCount() {
    return open.size();
  }

  int count() {
    return open.size() + away.size();
  }

  Optional<LinkLostException> lastLoss() {
    return Optional.ofNullable(lastLoss);
  }

  /** Deals with an event of a link's presence; others are not for here. */
  void deal(SessionEvent event) {
    if (event instanceof Lost lost) {
      lost(lost);
    } else if (event instanceof Away gone) {
      leave(gone.link());
      say(gone.link(), LinkState.AWAY, gone.why().getMessage() + " It is tried again.");
    } else if (event instanceof Returned back) {
      feed.returned(back.link(), back.monotonicNanos());
      away.remove(back.link());
      open.add(back.link());
      String again = seen.add(back.link()) ? "" : " again";
      say(back.link(), LinkState.RETURNED, feed.address(back.link()) + " is there" + again + ".");
    } else if (event instanceof Silent silent) {
      say(
          silent.link(),
          LinkState.SILENT,
          "Nothing came from %s for %d s. If something was measured, look at the meter."
              .formatted(feed.address(silent.link()), silent.since().toSeconds()));
    } else if (event instanceof Ended ended) {
      open.remove(ended.link());
    }
  }

  private void lost(Lost lost) {
    int dropped = feed.lost(lost.link()).length();
    leave(lost.link());
    lastLoss = lost.loss();
    watcher.lost(lost.loss(), dropped);
  }

  private void leave(String link) {
    open.remove(link);
    away.add(link);
  }

  private void say(String link, LinkState state, String sentence) {
    watcher.link(link, state, sentence);
  }
}
