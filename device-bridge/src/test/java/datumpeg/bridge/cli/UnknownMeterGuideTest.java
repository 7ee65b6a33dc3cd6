package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
    assertEquals(0, learned.get(30, TimeUnit.SECONDS), console.err());
    List<String> shown =
        learn.stream().skip(1).filter(line -> !line.startsWith("Reading ")).toList();
    assertEquals(
        "",
        DocumentPage.firstMissing(
            shown, console.out().replace(master.getSlaveName(), PORT).lines().toList()),
        console.out());
    for (List<String> row : sent) {
      assertTrue(typed.contains(row.get(0) + "\n"), typed);
    }

    List<String> measure = block(1);
    CompletableFuture<Integer> measuring = run("", measure.get(0) + " --wait 0");
    until(measuring, () -> isShown(measure.get(1)));
    meterSends("18004,21.4,OK");
    until(measuring, () -> isShown(measure.get(2)));
    master.close();
    measuring.get(30, TimeUnit.SECONDS);
    assertEquals(0, console.run("job", "show", "larkrise-01", "--readings"), console.err());
    assertTrue(console.out().contains("18004"), console.out());
    assertTrue(Files.exists(folder.resolve("meters/yard-laser.toml")));
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
    return CompletableFuture.supplyAsync(() -> console.runWithInput(typed, words));
  }

  private void meterSends(String line) throws IOException {
    master.getOutputStream().write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
    master.getOutputStream().flush();
  }

  private void until(CompletableFuture<Integer> running, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!happened.getAsBoolean() && !running.isDone()) {
      assertTrue(System.nanoTime() < deadline, "waited too long: " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
    assertTrue(happened.getAsBoolean(), console.err());
  }
}
