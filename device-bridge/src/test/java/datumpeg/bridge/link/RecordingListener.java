package datumpeg.bridge.link;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import datumpeg.bridge.frame.Bytes;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Keeps what a link tells, for a test that waits for it. Thread-safe. */
public final class RecordingListener implements LinkListener {
  private static final long DEADLINE_SECONDS = 60;

  private final BlockingQueue<Chunk> chunks = new LinkedBlockingQueue<>();
  private final BlockingQueue<Object> ends = new LinkedBlockingQueue<>();

  @Override
  public void received(Chunk chunk) {
    chunks.add(chunk);
  }

  @Override
  public void lost(LinkLostException loss) {
    ends.add(loss);
  }

  @Override
  public void ended() {
    ends.add("ended");
  }

  public Chunk awaitChunk() throws InterruptedException {
    Chunk chunk = chunks.poll(DEADLINE_SECONDS, TimeUnit.SECONDS);
    assertNotNull(chunk, "no bytes came in time");
    return chunk;
  }

  /** The next that came on a channel; those of others before it are passed over. */
  public Chunk awaitChunk(String channel) throws InterruptedException {
    Chunk chunk = awaitChunk();
    while (!chunk.channel().equals(channel)) {
      chunk = awaitChunk();
    }
    return chunk;
  }

  /** Waits for so many bytes, in however many chunks. */
  public Bytes awaitBytes(int count) throws InterruptedException {
    Bytes all = Bytes.empty();
    while (all.length() < count) {
      all = all.plus(awaitChunk().bytes());
    }
    return all;
  }

  /** The loss, or the text "ended". */
  public Object awaitEnd() throws InterruptedException {
    Object end = ends.poll(DEADLINE_SECONDS, TimeUnit.SECONDS);
    assertNotNull(end, "the link did not end in time");
    return end;
  }

  public boolean heardOfAnEnd() {
    return !ends.isEmpty();
  }

  public Bytes restOfBytes() {
    Bytes all = Bytes.empty();
    for (Chunk chunk : chunks) {
      all = all.plus(chunk.bytes());
    }
    return all;
  }
}
