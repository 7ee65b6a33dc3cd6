package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.jobfile.JobTexts;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * What docs/guide/unknown-meter.md tells a newcomer to type works, with an invented meter at the
 * other end of a pseudo-terminal.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class UnknownMeterGuideTest {
  private static final String PROMPT = "$ ../../datumpeg ";
  private static final String PORT = "/dev/ttyUSB0";

  @TempDir Path folder;
  private TestConsole console;
  private Pty master;
  private DocumentPage page;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withJob(folder).console;
    master = new Pty();
    page = new DocumentPage("guide/unknown-meter.md");
  }

  @AfterEach
  void close() throws IOException {
    if (!master.isClosed()) {
      master.close();
    }
  }

  @Test
  void aStrangerGetsReadingsOfAnUnknownMeterIntoAJob() throws Exception {
    learn();
    List<String> measure = block(1);
    CompletableFuture<Integer> measuring = run("", measure.get(0) + " --wait 0");
    until(measuring, () -> isShown(measure.get(1)));
    meterSends("18004,21.4,OK");
    until(measuring, () -> isShown(measure.get(2)));
    master.close();
    measuring.get(60, TimeUnit.SECONDS);
    assertEquals(0, console.run("job", "show", "larkrise-01", "--readings"), console.err());
    assertTrue(console.out().contains("18004"), console.out());
  }

  /** Step 2 of the page. */
  private void learn() throws Exception {
    List<String> learn = block(0);
    List<List<String>> sent = page.table("its display |");
    assertEquals(3, sent.size());
    String typed =
        learn.stream()
            .filter(line -> line.startsWith("Reading "))
            .map(line -> line.substring(line.indexOf(": ") + 2) + "\n")
            .reduce("", String::concat);
    CompletableFuture<Integer> learned = run(typed, learn.get(0));
    for (int i = 0; i < sent.size(); i++) {
      int reading = i + 1;
      until(learned, () -> console.err().contains("Reading " + reading + ", the display shows: "));
      meterSends(sent.get(i).get(1));
    }
    assertEquals(0, learned.get(60, TimeUnit.SECONDS), console.err());
    assertShown(learn.stream().filter(line -> !line.startsWith("Reading ")).toList());
    for (List<String> row : sent) {
      assertTrue(typed.contains(row.get(0) + "\n"), typed);
    }
    assertTrue(Files.exists(profile()));
  }

  private Path profile() {
    return folder.resolve("meters/yard-laser.toml");
  }

  private void assertShown(List<String> block) {
    List<String> printed = console.out().replace(master.getSlaveName(), PORT).lines().toList();
    assertEquals(
        "", DocumentPage.firstMissing(block.subList(1, block.size()), printed), console.out());
  }

  /** Step 4 of the page: the meter is held against a known distance. */
  private void check(String line, String... sent) throws Exception {
    CompletableFuture<Integer> checked = run("", line);
    for (int i = 1; i <= sent.length; i++) {
      int reading = i;
      until(checked, () -> console.err().split("Take the reading", -1).length == reading + 1);
      meterSends(sent[i - 1]);
    }
    assertEquals(0, checked.get(60, TimeUnit.SECONDS), console.err());
  }

  private static final String[] OF_TWELVE_METRES = {
    "12000,21.4,OK", "12001,21.4,OK", "12000,21.4,OK"
  };

  @Test
  void theMeterIsCheckedAgainstAKnownDistance() throws Exception {
    learn();
    for (String line : OF_TWELVE_METRES) {
      assertTrue(page.says("`" + line + "`"), line);
    }
    check(block(2).get(0), OF_TWELVE_METRES);
    assertShown(block(2));
    assertEquals(0, console.run("verify"), console.err());
  }

  /** In a job that describes no meter: the lines are uncommented as the page says. */
  @Test
  void theAccuracyOfTheDataSheetCountsOnceItIsInTheFile() throws Exception {
    String job = JobTexts.LARKRISE;
    int from = job.indexOf("[meters.laser]");
    String rest = job.substring(job.indexOf("\n[", from) + 1);
    Files.writeString(folder.resolve("bare.toml"), job.substring(0, from) + rest);
    assertEquals(0, console.run("job", "add", "bare.toml"), console.err());
    learn();
    List<String> sheet = page.blocks("toml").get(0);
    List<String> lines = new ArrayList<>(Files.readAllLines(profile()));
    for (int i = lines.size() - sheet.size(); i < lines.size(); i++) {
      lines.set(i, lines.get(i).replaceFirst("^# ", ""));
    }
    assertEquals(sheet, lines.subList(lines.size() - sheet.size(), lines.size()));
    Files.write(profile(), lines);

    CompletableFuture<Integer> measuring = run("", block(1).get(0) + " --wait 0");
    until(measuring, () -> isShown(block(1).get(1)));
    meterSends("18004,21.4,OK");
    until(measuring, () -> isShown(block(1).get(2)));
    master.close();
    measuring.get(60, TimeUnit.SECONDS);
    master = new Pty();
    check(block(2).get(0).replace("check laser", "check yard-laser"), OF_TWELVE_METRES);
    assertTrue(console.out().contains("known-distance of yard-laser"), console.out());
    assertFalse(console.out().contains("describes no meter"), console.out());
    assertTrue(console.out().contains("may be off by 1.6 mm"), console.out());
  }

  private boolean isShown(String line) {
    // The tone of a value taken goes to the terminal between the lines.
    String printed = console.err().replace("\u0007", "");
    return printed.lines().anyMatch(each -> DocumentPage.fits(line, each));
  }

  private List<String> block(int index) {
    return page.blocks("console").get(index);
  }

  private CompletableFuture<Integer> run(String typed, String line) {
    assertTrue(line.startsWith(PROMPT), line);
    String[] words =
        Arrays.stream(line.substring(PROMPT.length()).split(" ", -1))
            .map(word -> word.replace(PORT, master.getSlaveName()))
            .toArray(String[]::new);
    return console.begin(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), words);
  }

  private void meterSends(String line) throws IOException {
    master.getOutputStream().write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
    master.getOutputStream().flush();
  }

  private void until(CompletableFuture<Integer> running, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean() && !running.isDone()) {
      assertTrue(System.nanoTime() < deadline, "waited too long: " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
    assertTrue(happened.getAsBoolean(), console.err());
  }
}
