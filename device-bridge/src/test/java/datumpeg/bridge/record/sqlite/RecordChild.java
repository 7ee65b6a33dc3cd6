package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import org.sqlite.SQLiteConfig;

/** The other process of a test. */
final class RecordChild {
  private RecordChild() {}

  public static void main(String[] arguments) throws IOException, SQLException {
    Path file = Path.of(arguments[1]);
    if (arguments[0].equals("append")) {
      append(file, Integer.parseInt(arguments[2]));
    } else {
      hold(file);
    }
  }

  /** Prints the id of each reading once it is acknowledged. */
  private static void append(Path file, int count) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE);
        RecordSession session =
            record.openSession(new SessionStart("child", "0.1.0", Clock.systemUTC()))) {
      for (int i = 0; i < count; i++) {
        ReadingEntry reading = Rows.reading(i);
        session.append(Rows.JOB, reading);
        System.out.println(reading.id());
      }
    }
  }

  /** Holds the write lock until standard input ends. */
  private static void hold(Path file) throws IOException, SQLException {
    try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      System.out.println("held");
      System.in.transferTo(java.io.OutputStream.nullOutputStream());
      statement.execute("ROLLBACK");
    }
  }

  static Process start(String... arguments) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String[] command = new String[arguments.length + 5];
    command[0] = java;
    command[1] = "-Xshare:auto";
    command[2] = "-cp";
    command[3] = System.getProperty("java.class.path");
    command[4] = RecordChild.class.getName();
    System.arraycopy(arguments, 0, command, 5, arguments.length);
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  static BufferedReader linesOf(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }
}
