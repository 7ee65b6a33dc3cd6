package datumpeg.bridge.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.OuterWorldException;
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
        "arrival",
        "distance",
        value,
        "m",
        "2026-03-02T08:15:30Z",
        "Ines",
        "of two, \"A\" " + value);
  }

  @Test
  void theFirstRowMakesTheFile() throws IOException {
    UnassignedTable table = new UnassignedTable(folder.resolve("table.csv"));
    assertFalse(Files.exists(table.file()));
    table.add(row("7.1"));
    table.add(row("7.2"));
    assertEquals(2, table.rowCount());
    assertEquals(
        List.of(
            "stage,quantity,target,value,unit,at,operator,note",
            "arrival,distance,,7.1,m,2026-03-02T08:15:30Z,Ines,\"of two, \"\"A\"\" 7.1\"",
            "arrival,distance,,7.2,m,2026-03-02T08:15:30Z,Ines,\"of two, \"\"A\"\" 7.2\""),
        Files.readAllLines(table.file()));
  }

  @Test
  void aRowThatTheDiskDoesNotTakeIsSaidAndLeavesNothing() {
    UnassignedTable table = new UnassignedTable(folder.resolve("missing").resolve("table.csv"));
    OuterWorldException refused =
        assertThrows(OuterWorldException.class, () -> table.add(row("7.1")));
    assertTrue(String.valueOf(refused.getMessage()).contains("table.csv"), refused.getMessage());
    assertEquals(0, table.rowCount());
  }

  @Test
  void whatATableHasIsKnownAgainAlsoWhenItWasCompletedOrCutShort() throws IOException {
    UnassignedTable table = new UnassignedTable(folder.resolve("table.csv"));
    table.add(row("7.1"));
    table.add(row("7.2"));
    String text = Files.readString(table.file());
    Files.writeString(
        table.file(), text.replace("distance,,7.1", "distance,slab.A1-slab.B1,7.1") + "arrival,\"");
    assertEquals(
        List.of(row("7.3")),
        UnassignedTable.notIn(List.of(table.file()), List.of(row("7.1"), row("7.2"), row("7.3"))));
    assertEquals(List.of(row("7.1")), UnassignedTable.notIn(List.of(), List.of(row("7.1"))));
  }
}
