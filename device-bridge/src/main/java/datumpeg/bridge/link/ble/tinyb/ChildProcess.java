package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.io.BufferedInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The child seen from its parent: its lines in order, its end. A child that says more than is taken
 * waits with its output full. Thread-safe.
 */
final class ChildProcess implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ChildProcess.class);
  private static final int MOST_LINES = 1000;
  private static final int MOST_LOGGED = 40;

  /** Behind the last line. */
  private static final String END = "@end";

  /** A process whose output has ended is as good as gone; its status may take a moment. */
  private static final int STATUS_SECONDS = 5;

  private final Process process;
  private final BlockingQueue<String> lines = new ArrayBlockingQueue<>(MOST_LINES);

  private ChildProcess(Process process) {
    this.process = process;
  }

  /** Starts a child on a bus. */
  static ChildProcess start(String busAddress, String[] arguments) {
    Path java = Path.of(System.getProperty("java.home", ""), "bin", "java");
    if (!Files.isExecutable(java)) {
      throw unavailable("this installation has no " + java, null);
    }
    List<String> command =
        new ArrayList<>(
            List.of(
                java.toString(),
                "-Xmx48m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:+ErrorFileToStderr",
                "-XX:-CreateCoredumpOnCrash",
                "-cp",
                classPath(),
                TinybChild.class.getName()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("DBUS_SYSTEM_BUS_ADDRESS", busAddress);
    try {
      ChildProcess child = new ChildProcess(builder.start());
      child.daemon("tinyb lines", child::readLines);
      child.daemon("tinyb errors", child::readErrors);
      return child;
    } catch (IOException refused) {
      throw unavailable("no process could be started: " + refused.getMessage(), refused);
    }
  }

  private static String classPath() {
    return System.getProperty("java.class.path", "").replace("\n", File.pathSeparator);
  }

  private static LinkUnavailableException unavailable(String what, @Nullable Throwable cause) {
    return new LinkUnavailableException(
        Obstacle.REFUSED,
        "The Bluetooth backend tinyb runs in a process of its own, and " + what + ".",
        cause);
  }

  private void daemon(String name, Runnable body) {
    Thread thread = new Thread(body, name);
    thread.setDaemon(true);
    thread.start();
  }

  private void readLines() {
    LineReader reader = new LineReader(new BufferedInputStream(process.getInputStream()));
    try {
      for (String line = reader.next(); line != null; line = reader.next()) {
        lines.put(line);
      }
      lines.put(END);
    } catch (IOException e) {
      lines.offer(END);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A crash report is long: its beginning is kept. */
  private void readErrors() {
    LineReader reader = new LineReader(new BufferedInputStream(process.getErrorStream()));
    try {
      int count = 0;
      for (String line = reader.next(); line != null; line = reader.next()) {
        if (count++ < MOST_LOGGED && !line.isBlank()) {
          LOG.debug("tinyb: {}", line);
        }
      }
    } catch (IOException e) {
      LOG.debug("the errors of the child could not be read", e);
    }
  }

  /**
   * The next line of ours, the last of all with the word {@code end}; empty if none came in time.
   */
  Optional<ChildLine> next(Duration patience) throws InterruptedException {
    long start = System.nanoTime();
    while (true) {
      long left = patience.toNanos() - (System.nanoTime() - start);
      String line = lines.poll(Math.max(0, left), TimeUnit.NANOSECONDS);
      if (line == null) {
        return Optional.empty();
      }
      if (line.equals(END)) {
        boolean known = process.waitFor(STATUS_SECONDS, TimeUnit.SECONDS);
        String status = known ? String.valueOf(process.exitValue()) : "unknown";
        return Optional.of(ChildLine.of("end", status));
      }
      Optional<ChildLine> ours = ChildLine.parse(line);
      if (ours.isPresent()) {
        return ours;
      }
    }
  }

  /** Tells the child something; false if it is not there to hear it. */
  synchronized boolean tell(ChildLine line) {
    try {
      process.getOutputStream().write((line.text() + "\n").getBytes(StandardCharsets.UTF_8));
      process.getOutputStream().flush();
      return true;
    } catch (IOException gone) {
      return false;
    }
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** By which a test reaches the process. */
  long pid() {
    return process.pid();
  }

  /** Asks it to end, waits a little, and ends it. */
  void end(Duration patience) {
    tell(ChildLine.of("close"));
    try {
      process.waitFor(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    close();
  }

  @Override
  public void close() {
    process.destroyForcibly();
    lines.clear();
    lines.offer(END);
  }
}
