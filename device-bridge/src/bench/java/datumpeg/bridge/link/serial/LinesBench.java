package datumpeg.bridge.link.serial;

import com.pty4j.unix.Pty;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;

/**
 * Lines of a meter through a pseudo-terminal, the serial library and the decoder, beside a plain
 * loop of 64 KiB reads of a pseudo-terminal, by turns: decoded by the thread that reads, and by
 * another behind a queue, as a session does. What reads is open and has waited for half a second
 * when the lines begin, as in a session: the kernel spreads threads that were busy just before, or
 * are new, differently. Prints Markdown. Arguments: lines a run, runs.
 */
public final class LinesBench {
  private static final int WARM_UP = 3;
  private static final long REST_MILLIS = 500;

  private LinesBench() {}

  public static void main(String[] arguments) throws Exception {
    int lines = Integer.parseInt(arguments[0]);
    int runs = Integer.parseInt(arguments[1]);
    byte[] bytes = lines(lines);
    double[] plain = new double[runs];
    double[] alone = new double[runs];
    double[] queued = new double[runs];
    System.out.printf(
        "| run | plain loop, s | decoded as it is read, s | decoded behind a queue, s |%n"
            + "|---|---|---|---|%n");
    for (int run = -WARM_UP; run < runs; run++) {
      double ofPlain = plain(bytes);
      double ofAlone = link(bytes, lines, false);
      double ofQueued = link(bytes, lines, true);
      if (run >= 0) {
        plain[run] = ofPlain;
        alone[run] = ofAlone;
        queued[run] = ofQueued;
        System.out.printf(
            Locale.ROOT, "| %d | %.3f | %.3f | %.3f |%n", run + 1, ofPlain, ofAlone, ofQueued);
      }
    }
    System.out.printf(
        Locale.ROOT,
        "| median | %.3f | %.3f | %.3f |%n| plain loop over it | 1.00 | %.2f | %.2f |%n%n"
            + "%d lines, %d bytes; all %d read, in order.%n",
        median(plain),
        median(alone),
        median(queued),
        median(plain) / median(alone),
        median(plain) / median(queued),
        lines,
        bytes.length,
        lines);
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static byte[] lines(int count) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < count; i++) {
      text.append(1 + i % 40).append('.').append(digits(i % 1000)).append(" m\r\n");
    }
    return text.toString().getBytes(StandardCharsets.US_ASCII);
  }

  private static String digits(int value) {
    return Integer.toString(1000 + value).substring(1);
  }

  private static double plain(byte[] bytes) throws Exception {
    Pty master = new Pty();
    // As the serial library sets it, so that the kernel does the same work for both.
    String settings = "raw -echo -iexten clocal brkint min 0 time 5";
    new ProcessBuilder("sh", "-c", "stty -F " + master.getSlaveName() + " " + settings)
        .start()
        .waitFor();
    double seconds;
    try (InputStream in = new FileInputStream(master.getSlaveName())) {
      Thread.sleep(REST_MILLIS);
      long start = System.nanoTime();
      Thread writer = write(master, bytes);
      byte[] buffer = new byte[1 << 16];
      long read = 0;
      while (read < bytes.length) {
        read += in.read(buffer);
      }
      seconds = (System.nanoTime() - start) / 1e9;
      writer.join();
    }
    master.close();
    return seconds;
  }

  @SuppressWarnings("try") // open while it is read by its own thread
  private static double link(byte[] bytes, int lines, boolean behindQueue) throws Exception {
    Pty master = new Pty();
    Counting counting = new Counting(lines, behindQueue);
    double seconds;
    try (SerialLink link =
        SerialLink.open(
            new LinkAddress.Serial(master.getSlaveName(), SerialSettings.DEFAULT),
            LinkClock.system(),
            counting)) {
      Thread.sleep(REST_MILLIS);
      long start = System.nanoTime();
      Thread writer = write(master, bytes);
      counting.awaitAll();
      seconds = (System.nanoTime() - start) / 1e9;
      writer.join();
    }
    master.close();
    return seconds;
  }

  private static Thread write(Pty master, byte[] bytes) {
    OutputStream out = master.getOutputStream();
    Thread writer =
        new Thread(
            () -> {
              try {
                for (int from = 0; from < bytes.length; from += 1 << 16) {
                  // The part is copied: pty4j counts an offset twice.
                  out.write(
                      Arrays.copyOfRange(bytes, from, Math.min(from + (1 << 16), bytes.length)));
                }
                out.flush();
              } catch (IOException e) {
                throw new IllegalStateException(e);
              }
            });
    writer.start();
    return writer;
  }

  /** Checks that each value is the next one sent. */
  private static final class Counting implements LinkListener {
    private final BlockingQueue<Chunk> chunks = new ArrayBlockingQueue<>(100);
    private final CountDownLatch all = new CountDownLatch(1);
    private final MeterStream stream = new MeterStream(MeterProfiles.GENERAL_TEXT_LINE);
    private final int lines;
    private final boolean behindQueue;
    private final double[] values = new double[1000]; // after which both parts begin again
    private int count;

    Counting(int lines, boolean behindQueue) {
      this.lines = lines;
      this.behindQueue = behindQueue;
      Arrays.setAll(values, i -> Double.parseDouble((1 + i % 40) + "." + digits(i)));
    }

    void awaitAll() throws InterruptedException {
      while (behindQueue && count < lines) {
        decode(chunks.take());
      }
      all.await();
    }

    private void decode(Chunk chunk) {
      stream.accept(chunk.bytes(), chunk.channel(), this::check);
      if (count == lines) {
        all.countDown();
      }
    }

    private void check(MeterStream.Message message) {
      double expected = values[count % values.length];
      if (!(message.decoded() instanceof Measured measured)
          || measured.siValue() != expected) {
        throw new IllegalStateException(
            "line " + count + ": expected " + expected + " m, found " + message);
      }
      count++;
    }

    @Override
    public void received(Chunk chunk) {
      if (!behindQueue) {
        decode(chunk);
        return;
      }
      try {
        chunks.put(chunk);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    @Override
    public void lost(LinkLostException loss) {
      throw loss;
    }

    @Override
    public void ended() {}
  }
}
