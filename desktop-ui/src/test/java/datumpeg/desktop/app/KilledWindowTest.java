package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * {@code kill -9} of the window at random moments while a meter sends over a pseudo-terminal. How
 * often: the system property {@code datumpeg.window-kills}, 2 in the normal build.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no signal 9")
class KilledWindowTest {
  /** A stage has not many targets that a distance meter measures. */
  private static final int KILLS_A_RECORD = 3;

  private static final long SECONDS_TO_ASK = 120;
  private static final Pattern ACKNOWLEDGED = Pattern.compile("said\tRecorded (\\S+) m for .+");

  @TempDir Path folder;
  private final SplittableRandom random = new SplittableRandom(20260302);
  private int acknowledgedInAll;
  private int sameTargets;

  @Test
  @Timeout(value = 2, unit = TimeUnit.HOURS)
  void whatTheScreenAcknowledgedIsThereOnceAndTheNextWindowGoesOn() throws Exception {
    DisplayCheck.ofThisMachine(System.getenv())
        .whatIsMissing()
        .ifPresent(sentence -> Assumptions.abort("screens are not tested: " + sentence));
    int kills = Integer.getInteger("datumpeg.window-kills", 2);
    for (int done = 0; done < kills; done += KILLS_A_RECORD) {
      Site site = new Site(Files.createDirectory(folder.resolve("site-" + done)));
      site.kill(Math.min(KILLS_A_RECORD, kills - done));
    }
    assertTrue(acknowledgedInAll > 0, "nothing was measured before the kills");
    assertTrue(sameTargets > 0, "no window was seen to go on");
    System.getLogger(KilledWindowTest.class.getName())
        .log(
            System.Logger.Level.INFO,
            "{0} kills, {1} readings acknowledged, {2} times the target asked for before",
            kills,
            acknowledgedInAll,
            sameTargets);
  }

  /** One record, killed a few times. */
  private final class Site {
    private final Path home;
    private final Path record;
    private final SampleJob sample;
    private final Pty meter = new Pty();
    private final Set<String> sent = new HashSet<>();
    private final Set<String> acknowledged = new HashSet<>();
    private long seenNanos = System.nanoTime() - 2_000_000_000L;
    private String asked = "";

    Site(Path home) throws IOException {
      this.home = home;
      this.record = home.resolve("site.db");
      this.sample = SampleJob.of("larkrise-01", record);
      sample.run(sample.steps().get(0));
      new SettingsFile(sample.settingsFile())
          .save(
              Settings.usual()
                  .withLast(
                      Map.of(
                          "record", record.toString(),
                          "job", "larkrise-01",
                          "stage", "arrival",
                          "screen", "measure",
                          "measure.operator", "Ines",
                          "measure.link.0", "serial:" + meter.getSlaveName(),
                          "measure.profile.0", "general-text-line")));
    }

    void kill(int kills) throws Exception {
      for (int run = 0; run <= kills; run++) {
        Window window = new Window(home.resolve("said-" + run + ".txt"), record, run == 0);
        try {
          window.until("asks\t");
          restored(window, run);
          if (run < kills) {
            measure(window, run == kills - 1);
          }
        } finally {
          window.kill();
        }
        acknowledge(window);
      }
      acknowledgedInAll += acknowledged.size();
      sample.run("verify");
      meter.close();
    }

    /** Job, stage and target are those of the window that was killed. */
    private void restored(Window window, int run) throws IOException {
      String before = window.last("before\t");
      assertTrue(before.contains("id=larkrise-01,"), before);
      assertTrue(before.contains("id=arrival,"), before);
      assertTrue(
          before.endsWith(run == 0 ? "Begin measuring" : "Go on: Hay shed, Larkrise Farm, Arrival"),
          before);
      boolean allAcknowledged = acknowledged.size() == recorded().size();
      if (run > 0 && allAcknowledged) {
        assertEquals(asked, window.first("asks\t"));
        sameTargets++;
      }
    }

    /**
     * The last value is sent and the window killed before, while or after it is stored.
     *
     * @param onceSaid only after it is, so that one window of each record knows what the next has
     *     to ask for
     */
    private void measure(Window window, boolean onceSaid) throws IOException {
      if (sent.isEmpty()) {
        window.until("asks\tMeasure from slab corner A1 to slab corner B4"); // one is skipped
      }
      int whole = random.nextInt(1, 3);
      for (int i = 0; i < whole; i++) {
        sendAndSee(window);
      }
      if (onceSaid) {
        sendAndSee(window);
      } else {
        send(window);
      }
      LockSupport.parkNanos(random.nextLong(1, 400) * 1_000_000);
    }

    private void sendAndSee(Window window) throws IOException {
      String value = send(window);
      window.until("said\tRecorded " + value + " m for ");
      seenNanos = System.nanoTime();
    }

    /**
     * Near to what the plan says, and no value twice. Values within a second would be held; it
     * begins when the one before is seen, since a busy machine takes its time with what was sent.
     */
    private String send(Window window) throws IOException {
      LockSupport.parkNanos(seenNanos + 1_100_000_000L - System.nanoTime());
      String[] wanted = window.last("asks\t").split("\t", -1);
      boolean ofPlan = wanted[2].matches("[0-9.]+ m");
      double near = ofPlan ? Double.parseDouble(wanted[2].replace(" m", "")) : 1.2;
      String value = String.format(Locale.ROOT, "%.4f", near + 0.0001 * (sent.size() + 1));
      sent.add(value);
      meter.getOutputStream().write((value + " m\r\n").getBytes(StandardCharsets.UTF_8));
      meter.getOutputStream().flush();
      return value;
    }

    private void acknowledge(Window window) throws IOException {
      for (String line : window.lines()) {
        Matcher taken = ACKNOWLEDGED.matcher(line);
        if (taken.matches()) {
          acknowledged.add(String.valueOf(taken.group(1)));
        }
      }
      asked = window.last("asks\t");
      List<String> recorded = recorded();
      assertEquals(recorded.size(), new HashSet<>(recorded).size(), "twice: " + recorded);
      assertTrue(recorded.containsAll(acknowledged), acknowledged + " of " + recorded);
      assertTrue(sent.containsAll(recorded), recorded + " of " + sent);
    }

    private List<String> recorded() {
      try (SiteRecord opened = SqliteRecords.open(record, SqliteRecords.Mode.READ)) {
        return opened.log(StoredJob.find(opened, "larkrise-01")).inForce().stream()
            .map(row -> row.entry())
            .map(ReadingEntry::value)
            .toList();
      }
    }
  }

  /** A window as a process, and what its person says. */
  private static final class Window {
    private final Path said;
    private final Process process;

    Window(Path said, Path record, boolean skipsFirst) throws IOException {
      this.said = said;
      List<String> command = new ArrayList<>();
      command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      command.add("-XX:TieredStopAtLevel=1");
      for (String each : List.of("glass.platform", "monocle.platform", "prism.order")) {
        command.add("-D" + each + "=" + System.getProperty(each));
      }
      command.add("-Djava.awt.headless=true");
      command.add("-Ddatumpeg.skip-first=" + skipsFirst);
      command.addAll(
          List.of(
              "-cp",
              System.getProperty("java.class.path"),
              WindowUnderKill.class.getName(),
              "desktop",
              "--record",
              record.toString()));
      ProcessBuilder builder = new ProcessBuilder(command);
      builder.environment().put("HOME", String.valueOf(record.getParent()));
      builder.environment().keySet().removeIf(name -> name.startsWith("XDG_"));
      File err = new File(said + ".err");
      process = builder.redirectOutput(said.toFile()).redirectError(err).start();
    }

    /** Waits until a whole line says so. */
    void until(String part) throws IOException {
      long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS_TO_ASK);
      while (lines().stream().noneMatch(line -> line.contains(part))) {
        assertTrue(
            process.isAlive() && System.nanoTime() < deadline,
            () -> part + " was not said, alive " + process.isAlive() + ": " + all());
        LockSupport.parkNanos(5_000_000);
      }
    }

    /** The whole lines; the last may be cut off by the kill. */
    List<String> lines() throws IOException {
      // Its last letter may be there in part only.
      String text = new String(Files.readAllBytes(said), StandardCharsets.UTF_8);
      return text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
    }

    String first(String beginning) throws IOException {
      return lines().stream().filter(line -> line.startsWith(beginning)).findFirst().orElse("");
    }

    String last(String beginning) throws IOException {
      return lines().stream()
          .filter(line -> line.startsWith(beginning))
          .reduce((one, other) -> other)
          .orElse("");
    }

    private String all() {
      try {
        return Files.readString(said) + Files.readString(Path.of(said + ".err"));
      } catch (IOException e) {
        return e.toString();
      }
    }

    void kill() throws InterruptedException {
      process.destroyForcibly().waitFor();
    }
  }
}
