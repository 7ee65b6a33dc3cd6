package datumpeg.bridge.cli;

import datumpeg.bridge.frame.ByteRows;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import java.io.PrintStream;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.concurrent.CompletableFuture;

/** Prints what a link receives, as it comes. Written on the link's thread, awaited on another. */
final class MetersWatch implements LinkListener {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss.SSS").withZone(ZoneOffset.UTC);

  private final PrintStream out;
  private final CompletableFuture<LinkLostException> end = new CompletableFuture<>();

  MetersWatch(PrintStream out) {
    this.out = out;
  }

  @Override
  public void received(Chunk chunk) {
    String time = TIME.format(chunk.receivedAt());
    ByteRows.of(chunk.bytes()).forEach(row -> out.println(time + "  " + row));
  }

  @Override
  public void lost(LinkLostException loss) {
    end.complete(loss);
  }

  @Override
  public void ended() {
    throw new IllegalStateException("a serial link has no end of its own");
  }

  /** Waits until the link is lost, and returns the loss. */
  LinkLostException awaitLoss() {
    return end.join();
  }
}
