package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.util.OSInfo;

/** Measuring, as a process of its own, while its record gives way in earnest. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no limit on the size of a file")
class RecordTroubleTest {
  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin", "java").toString();

  @TempDir Path folder;
  private TestConsole console;
  private final List<Process> started = new ArrayList<>();

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withJob(folder).console;
  }

  @AfterEach
  void close() {
    started.forEach(Process::destroyForcibly);
  }

  private Process measuring(String... before) throws IOException {
    List<String> command = new ArrayList<>(List.of(before));
    command.addAll(
        List.of(
            JAVA,
            "-XX:TieredStopAtLevel=1",
            "-XX:-UsePerfData",
            "-Dorg.sqlite.lib.path=" + nativeLibrary().getParent(),
            "-Dorg.sqlite.lib.name=" + nativeLibrary().toFile().getName(),
            "-cp",
            System.getProperty("java.class.path"),
            ProgramUnderKill.class.getName(),
            "measure",
            "larkrise-01",
            "--stage",
            "arrival",
            "--silent",
            "--record",
            console.recordFile().toString()));
    Process process =
        OwnHome.process(folder, command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(folder.resolve("said.txt").toFile())
            .start();
    started.add(process);
    until("a target is asked for", () -> said().contains("Measure ") || !process.isAlive());
    return process;
  }

  /** Unpacked here, since the process below may write no file of its size. */
  private Path nativeLibrary() throws IOException {
    String name = System.mapLibraryName("sqlitejdbc");
    Path file = folder.resolve(name);
    String inside =
        "/org/sqlite/native/" + OSInfo.getNativeLibFolderPathForCurrentOS() + "/" + name;
    if (!Files.exists(file)) {
      try (InputStream content = OSInfo.class.getResourceAsStream(inside)) {
        Files.copy(Objects.requireNonNull(content, inside), file);
      }
    }
    return file;
  }

  private static void type(Process process, String lines) throws IOException {
    OutputStream in = process.getOutputStream();
    in.write(lines.getBytes(StandardCharsets.UTF_8));
    in.flush();
  }

  private String said() {
    try {
      return WrittenMeanwhile.text(folder.resolve("said.txt"));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private int times(String what) {
    return said().split(what, -1).length - 1;
  }

  private void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(120);
    while (!happened.getAsBoolean()) {
      assertTrue(System.nanoTime() < deadline, "waited too long until " + what + ": " + said());
      LockSupport.parkNanos(10_000_000);
    }
  }

  private int quit(Process process) throws Exception {
    type(process, "quit\n");
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it did not end");
    return process.exitValue();
  }

  private Connection connect() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + console.recordFile());
  }

  private void emptyTheWriteAheadLog() throws SQLException {
    try (Connection connection = connect();
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }

  private List<String> stored() {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      JobLog log = opened.log(StoredJob.find(opened, "larkrise-01"));
      return log.readings().stream().map(row -> row.entry().value()).toList();
    }
  }

  /** Those that something waits in: a session keeps room for it all the time. */
  private long waitingFiles() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      return files
          .filter(file -> file.toFile().getName().startsWith("waiting-"))
          .filter(RecordTroubleTest::saysSomething)
          .count();
    }
  }

  private static boolean saysSomething(Path file) {
    try {
      return !Files.readString(file).isBlank();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aLockedRecordIsSaidAndWhatWaitsIsStoredWhenTheLockIsGone() throws Exception {
    Process process = measuring();
    type(process, "18.001\n");
    until("one is recorded", () -> times("  recorded ") == 1);
    try (Connection connection = connect();
        Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      type(process, "20.122\n");
      until("it is said", () -> said().contains("NOT STORED YET: 1 wait(s), at most 500 may"));
      assertTrue(said().contains("another process held it locked"), said());
      assertEquals(1, waitingFiles(), "it is kept beside the record");
      assertEquals(1, times("  recorded "), "what waits is not called recorded");
      statement.execute("ROLLBACK");
    }
    // Nothing more is typed: it is stored by itself.
    until("it is stored", () -> said().contains("what waited is stored now"));
    assertEquals(0, waitingFiles());
    assertEquals(0, quit(process), said());
    assertEquals(List.of("18.001", "20.122"), stored().stream().sorted().toList());
    assertEquals(0, console.run("verify"), console.err());
  }

  @Test
  void aDiskThatTakesNoMoreIsSaidAndNothingIsLostOrDoubled() throws Exception {
    // No file may grow beyond 256 KiB: the log that SQLite writes ahead is the first to meet it.
    Process process = measuring("bash", "-c", "ulimit -f 256; exec \"$0\" \"$@\"");
    int typed = 0;
    while (!said().contains("NOT STORED YET")) {
      typed++;
      assertTrue(typed < 200, said());
      type(process, "18.%03d\nback\n".formatted(typed % 50));
      int events = typed;
      until("it is dealt with", () -> times("Measure ") > 2 * (events - 1) + 1);
      LockSupport.parkNanos(20_000_000);
    }
    assertTrue(said().contains("disk"), said());
    type(process, "18.049\nback\n");
    typed++;
    // Let go of and opened again, the record has emptied that log by itself.
    until("they are stored", () -> said().contains("what waited is stored now"));
    assertEquals(0, quit(process), said());
    assertEquals(typed, stored().size(), said());
    assertEquals(0, console.run("verify"), console.err());
  }

  @Test
  void aDamagedPageIsSaidAndWhatWaitsOutlivesTheProgram() throws Exception {
    Process process = measuring();
    type(process, "18.001\n");
    until("one is recorded", () -> times("  recorded ") == 1);
    emptyTheWriteAheadLog();
    byte[] whole = Files.readAllBytes(console.recordFile());
    try (RandomAccessFile file = new RandomAccessFile(console.recordFile().toFile(), "rw")) {
      file.seek(4096);
      file.write(new byte[whole.length - 4096]);
    }
    type(process, "20.122\n");
    until("it is said", () -> said().contains("NOT STORED YET: 1 wait(s)"));
    assertTrue(said().contains("a page of the file is damaged"), said());
    assertEquals(1, times("  recorded "), said());
    assertEquals(3, quit(process), said());
    assertEquals(1, waitingFiles());
    // The newest copy that verifies is put back, and the stage measured on.
    Files.deleteIfExists(Path.of(console.recordFile() + "-wal"));
    Files.deleteIfExists(Path.of(console.recordFile() + "-shm"));
    Files.write(console.recordFile(), whole);
    assertEquals(
        0,
        console.runWithInput("quit\n", "measure", "larkrise-01", "--stage", "arrival"),
        console.err());
    assertEquals(List.of("18.001", "20.122"), stored().stream().sorted().toList());
    assertEquals(0, waitingFiles());
    assertEquals(0, console.run("verify"), console.err());
  }
}
