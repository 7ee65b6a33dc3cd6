package datumpeg.bridge.link.modbus;

import com.pty4j.unix.Pty;
import datumpeg.bridge.frame.Bytes;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;

/**
 * A Modbus station at the other end of a pseudo-terminal that knows whole frames only: each
 * question has its answer, written out in bytes; any other question is met with silence.
 */
public final class FakeStation implements AutoCloseable {
  private static final int QUESTION_BYTES = 8;

  private final Pty master = new Pty();
  private final Map<String, Deque<String>> answers = new LinkedHashMap<>();
  private final AtomicInteger questionCount = new AtomicInteger();

  public FakeStation() throws IOException {
    Thread thread = new Thread(this::run, "station");
    thread.setDaemon(true);
    thread.start();
  }

  public String port() {
    return master.getSlaveName();
  }

  /** From now on the question, in hexadecimal digits, is answered so, one after the other. */
  public synchronized FakeStation answers(String question, String... inTurn) {
    answers.put(question, new ArrayDeque<>(List.of(inTurn)));
    return this;
  }

  public int questionCount() {
    return questionCount.get();
  }

  private void run() {
    byte[] question = new byte[QUESTION_BYTES];
    int length = 0;
    while (!master.isClosed()) {
      try {
        byte[] piece = new byte[QUESTION_BYTES - length];
        int count = master.getInputStream().read(piece);
        if (count < 0) {
          throw new IOException("nobody has the other end open");
        }
        System.arraycopy(piece, 0, question, length, count);
        length += count;
        if (length == QUESTION_BYTES) {
          length = 0;
          questionCount.incrementAndGet();
          answer(Bytes.of(question).hex());
        }
      } catch (IOException e) {
        LockSupport.parkNanos(1_000_000);
      }
    }
  }

  private synchronized void answer(String question) throws IOException {
    Deque<String> inTurn = answers.get(question);
    if (inTurn != null) {
      String answer = inTurn.size() > 1 ? inTurn.remove() : inTurn.element();
      // In two pieces, as a slow line delivers them.
      Bytes bytes = Bytes.ofHex(answer);
      master.getOutputStream().write(bytes.slice(0, 2).toArray());
      master.getOutputStream().flush();
      master.getOutputStream().write(bytes.slice(2, bytes.length()).toArray());
      master.getOutputStream().flush();
    }
  }

  @Override
  public void close() throws IOException {
    master.close();
  }
}
