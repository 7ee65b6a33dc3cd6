package datumpeg.bridge.cli;

import datumpeg.bridge.frame.ByteRows;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ReturningLinkListener;
import java.io.PrintStream;
import java.time.Duration;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Prints what a link receives, as it comes. Written on the link's threads, awaited on another. */
final class MetersWatch implements ReturningLinkListener {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss.SSS").withZone(ZoneOffset.UTC);

  private final PrintStream out;
  private final PrintStream err;

  /** Each loss, and each return as an empty one. */
  private final BlockingQueue<Optional<LinkLostException>> losses = new LinkedBlockingQueue<>();

  private String channel = Chunk.ONLY_CHANNEL;

  MetersWatch(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  @Override
  public void received(Chunk chunk) {
    String time = TIME.format(chunk.receivedAt());
    if (!chunk.channel().equals(channel)) {
      channel = chunk.channel();
      out.println(time + "  from " + channel);
    }
    ByteRows.of(chunk.bytes()).forEach(row -> out.println(time + "  " + row));
  }

  @Override
  public void lost(LinkLostException loss) {
    err.println(loss.getMessage() + " It is opened again as soon as it is there.");
    losses.add(Optional.of(loss));
  }

  @Override
  public void away(LinkUnavailableException why) {
    err.println(why.getMessage() + " It is tried again.");
  }

  @Override
  public void returned() {
    err.println("The link is there again.");
    losses.add(Optional.empty());
  }

  @Override
  public void silent(Duration since) {
    err.println("Nothing came for " + since.toSeconds() + " s.");
  }

  @Override
  public void ended() {
    throw new IllegalStateException("a live link has no end of its own");
  }

  /**
   * Waits until the link is lost and not back after a while, and returns the loss.
   *
   * @param patience for how long it may be away; empty for ever
   */
  LinkLostException awaitEnd(Optional<Duration> patience) throws InterruptedException {
    while (true) {
      Optional<LinkLostException> loss = losses.take();
      if (loss.isPresent() && patience.isPresent()) {
        Optional<LinkLostException> next =
            losses.poll(patience.get().toNanos(), TimeUnit.NANOSECONDS);
        if (next == null) {
          return loss.get();
        }
      }
    }
  }
}
