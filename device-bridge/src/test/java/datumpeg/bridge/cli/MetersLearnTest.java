package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.binary.CheckSum;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.link.modbus.FakeStation;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Learning over a pseudo-terminal, with lines from a pipe. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class MetersLearnTest {
  @TempDir Path folder;
  private TestConsole console;
  private Pty master;

  @BeforeEach
  void open() throws IOException {
    console = new TestConsole(folder);
    master = new Pty();
  }

  @AfterEach
  void close() throws IOException {
    master.close();
  }

  private String link() {
    return "serial:" + master.getSlaveName();
  }

  /** Types everything at once; each message is sent when its reading is asked for. */
  private int learn(String typed, String as, String... messages) throws Exception {
    CompletableFuture<Integer> ended =
        console.begin(
            new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)),
            "meters",
            "learn",
            "--json",
            "--link",
            link(),
            "--as",
            as);
    for (int i = 0; i < messages.length; i++) {
      String asked = "Reading " + (i + 1) + ",";
      long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
      while (!console.err().contains(asked) && !ended.isDone()) {
        assertTrue(System.nanoTime() < deadline, console.err());
        LockSupport.parkNanos(5_000_000);
      }
      master.getOutputStream().write(messages[i].getBytes(StandardCharsets.UTF_8));
      master.getOutputStream().flush();
    }
    return ended.get(60, TimeUnit.SECONDS);
  }

  @Test
  void anotherReadingIsAskedForWhileSeveralWaysFit() throws Exception {
    int status =
        learn(
            "1.100 m\n2.200 m\n3.300 m\n4.400 m\n",
            "two-fields",
            "1.100;1.100\r",
            "2.200;2.200\r",
            "3.300;3.300\r",
            "4.400;9.999\r");
    assertEquals(0, status, console.err());
    assertTrue(console.err().contains("2 ways of reading the bytes fit"), console.err());
    JsonObject document = JsonReader.readObject(console.out(), "meters learn");
    assertEquals(Set.of("format", "profile", "words", "file"), document.members().keySet());
    String file = Files.readString(Path.of(document.text("file")));
    assertTrue(file.contains("line = \"{value};{number}\""), file);
    assertTrue(file.contains("# [accuracy]"), file);
  }

  @Test
  void aDisplayTypedWronglyIsFoundAndLeftOut() throws Exception {
    int status =
        learn(
            "1.100 m\nwhat?\n2.020 m\n3.300 m\n4.400 m\n",
            "wrong-once",
            "1.100\r\n",
            "2.200\r\n",
            "3.300\r\n",
            "4.400\r\n");
    assertEquals(0, status, console.err());
    assertTrue(console.err().contains("'what?' is not one number"), console.err());
    assertTrue(console.err().contains("Without '2.020 m' the others fit"), console.err());
  }

  @Test
  void nothingIsWrittenWhenThePersonQuitsOrTheInputEnds() throws Exception {
    assertEquals(0, learn("quit\n", "left"));
    assertEquals(2, learn("1.100 m\n", "left", "1.100\r\n"));
    assertTrue(console.err().contains("The input ended after 1 reading(s)"), console.err());
    assertFalse(Files.exists(folder.resolve("meters")));
  }

  @Test
  void aNameThatIsTakenOrNoneIsRefusedBeforeTheLinkIsOpened() {
    assertEquals(2, console.run("meters", "learn", "--link", "serial:/no", "--as", "a b"));
    assertTrue(console.err().contains("--as is 'a b'"), console.err());
    assertEquals(
        2, console.run("meters", "learn", "--link", "serial:/no", "--as", "general-text-line"));
    assertTrue(console.err().contains("already"), console.err());
    assertEquals(3, console.run("meters", "learn", "--link", "serial:/no", "--as", "free"));
  }

  @Test
  void registersAreLookedThroughAndTheStationIsAskedByAnEmptyLine() throws Exception {
    try (FakeStation station = new FakeStation()) {
      // Four input registers of station 1 from 0; the value is float32 in the last two.
      String question = crc("010400000004");
      station.answers(
          question,
          crc("01040800070001414570a4"),
          crc("0104080007000241100419"),
          crc("01040800070003418ff7cf"));
      int status =
          console.runWithInput(
              "\n12.340 m\n\n9.001 m\n\n17.996 m\n",
              "meters",
              "learn",
              "--link",
              "serial:" + station.port(),
              "--registers",
              "input:0+4@1",
              "--as",
              "inputs");
      assertEquals(0, status, console.err());
    }
    String file = Files.readString(folder.resolve("meters/inputs.toml"));
    assertTrue(file.contains("first = 2"), file);
    assertTrue(file.contains("format = \"float32\""), file);
    assertTrue(file.contains("table = \"input\""), file);
  }

  private static String crc(String hex) {
    return CheckSum.CRC16.closing(Bytes.ofHex(hex)).hex();
  }

  @Test
  void registersThatAreNoneAreRefused() {
    for (String wrong : new String[] {"holding:0", "coil:0+1@1", "input:0+126@1", "input:0+1@0"}) {
      String[] words = {
        "meters", "learn", "--link", "serial:/no", "--as", "a", "--registers", wrong
      };
      assertEquals(2, console.run(words), wrong);
      assertTrue(console.err().contains("--registers is '" + wrong), console.err());
    }
  }

  @Test
  void aCommandIsWrittenWithBackslashes() {
    assertEquals(Bytes.ofHex("4d0d0a095cff41"), CommandText.bytes("M\\r\\n\\t\\\\\\xffA"));
    for (String wrong : new String[] {"\\", "\\q", "\\x1", "\\xzz"}) {
      assertThrows(InputException.class, () -> CommandText.bytes(wrong), wrong);
    }
  }
}
