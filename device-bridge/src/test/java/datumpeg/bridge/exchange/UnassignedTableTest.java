package datumpeg.bridge.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UnassignedTableTest {
  @TempDir Path folder;

  private static UnassignedTable.Row row(String value) {
    return new UnassignedTable.Row(
        "arrival", "distance", value, "m", "2026-03-02T08:15:30Z", "Ines", "which of two, \"A\"");
  }

  @Test
  void theFirstRowMakesTheFile() throws IOException {
    UnassignedTable table = new UnassignedTable(folder.resolve("table.csv"));
    table.drain();
    assertFalse(Files.exists(table.file()));
    assertTrue(table.add(row("7.1")));
    assertTrue(table.add(row("7.2")));
    assertEquals(2, table.rowCount());
    assertEquals(
        List.of(
            "stage,quantity,target,value,unit,at,operator,note",
            "arrival,distance,,7.1,m,2026-03-02T08:15:30Z,Ines,\"which of two, \"\"A\"\"\"",
            "arrival,distance,,7.2,m,2026-03-02T08:15:30Z,Ines,\"which of two, \"\"A\"\"\""),
        Files.readAllLines(table.file()));
  }

  @Test
  void rowsThatTheDiskDoesNotTakeWaitInOrderAndOnlySoMany() throws IOException {
    Path later = folder.resolve("later");
    UnassignedTable table = new UnassignedTable(later.resolve("table.csv"));
    for (int i = 0; i < UnassignedTable.MOST_WAITING; i++) {
      assertTrue(table.add(row("" + i)));
    }
    assertFalse(table.add(row("one too many")));
    assertEquals(0, table.rowCount());
    assertEquals(UnassignedTable.MOST_WAITING, table.waitingCount());
    Files.createDirectory(later);
    table.drain();
    assertTrue(table.add(row("last")));
    assertEquals(0, table.waitingCount());
    List<String> lines = Files.readAllLines(table.file());
    assertEquals(table.rowCount() + 1, lines.size());
    assertTrue(lines.get(1).startsWith("arrival,distance,,0,m,"), lines.get(1));
    assertTrue(lines.get(500).startsWith("arrival,distance,,499,m,"), lines.get(500));
  }
}
