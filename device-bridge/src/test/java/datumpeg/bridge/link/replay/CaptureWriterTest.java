package datumpeg.bridge.link.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureHeader.CapturedLink;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CaptureWriterTest {
  private static final LinkClock CLOCK =
      new LinkClock() {
        @Override
        public Instant now() {
          return Instant.parse("2026-03-02T08:15:00Z");
        }

        @Override
        public long monotonicNanos() {
          return 7;
        }
      };

  private static CaptureHeader header() {
    Map<String, CapturedLink> links = new LinkedHashMap<>();
    links.put("L1", new CapturedLink("serial:/dev/ttyUSB0", "laser", "general-text-line@00"));
    links.put("L2", new CapturedLink("keyboard:", null, null));
    return new CaptureHeader("larkrise-01", "arrival", links);
  }

  private static Chunk chunk(String hex) {
    return new Chunk(Bytes.ofHex(hex), CLOCK.now(), CLOCK.monotonicNanos(), Chunk.ONLY_CHANNEL);
  }

  @Test
  void theTextIsAsTheContractSays(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("morning.jsonl");
    try (CaptureWriter writer = CaptureWriter.create(file, header())) {
      writer.acted(Kind.TARGET, "slab.A1-slab.B1", null, null, CLOCK);
      writer.sent("L1", Chunk.ONLY_CHANNEL, Bytes.ofHex("440d"), CLOCK);
      writer.received("L1", chunk("31f8"));
      writer.acted(Kind.TYPED, "column.A2/across", 2, "0,4°", CLOCK);
    }
    String start = ",\"t\":\"2026-03-02T08:15:00Z\",\"mono_ns\":7,";
    assertEquals(
        List.of(
            "{\"capture\":1,\"job\":\"larkrise-01\",\"stage\":\"arrival\",\"links\":{"
                + "\"L1\":{\"link\":\"serial:/dev/ttyUSB0\",\"meter\":\"laser\","
                + "\"profile\":\"general-text-line@00\"},\"L2\":{\"link\":\"keyboard:\"}}}",
            "{\"n\":1" + start + "\"act\":\"target\",\"target\":\"slab.A1-slab.B1\"}",
            "{\"n\":2"
                + start
                + "\"link\":\"L1\",\"dir\":\"tx\",\"channel\":\"data\",\"hex\":\"440d\"}",
            "{\"n\":3"
                + start
                + "\"link\":\"L1\",\"dir\":\"rx\",\"channel\":\"data\",\"hex\":\"31f8\"}",
            "{\"n\":4"
                + start
                + "\"act\":\"typed\",\"target\":\"column.A2/across\",\"face\":2,\"text\":\"0,4°\"}"),
        Files.readAllLines(file));
  }

  @Test
  void whatWasWrittenIsReadBack(@TempDir Path folder) {
    Path file = folder.resolve("morning.jsonl");
    List<CaptureEntry> written = new ArrayList<>();
    try (CaptureWriter writer = CaptureWriter.create(file, header())) {
      for (int value = 0; value < 256; value++) {
        written.add(writer.received("L1", chunk("%02x".formatted(value))));
      }
      for (Kind kind : Kind.values()) {
        written.add(writer.acted(kind, "a \"quoted\"\n target", 1, "\u2028 ° \\", CLOCK));
      }
    }
    try (CaptureReader reader = CaptureReader.open(file)) {
      assertEquals(header(), reader.header());
      for (CaptureEntry entry : written) {
        assertEquals(Optional.of(entry), reader.next());
      }
      assertEquals(Optional.empty(), reader.next());
    }
  }

  @Test
  void eachLineIsInTheFileBeforeTheNextIsWritten(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("morning.jsonl");
    try (CaptureWriter writer = CaptureWriter.create(file, header())) {
      for (int line = 1; line <= 5; line++) {
        assertEquals(line, Files.readAllLines(file).size());
        writer.received("L1", chunk("31"));
      }
    }
  }

  @Test
  void aCaptureThatIsThereIsNeverOverwritten(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("morning.jsonl"), "evidence");
    InputException refused =
        assertThrows(InputException.class, () -> CaptureWriter.create(file, header()));
    assertTrue(String.valueOf(refused.getMessage()).contains(file.toString()));
    assertEquals("evidence", Files.readString(file));
  }

  @Test
  void aFolderThatIsMissingIsAFailureOfTheOuterWorld(@TempDir Path folder) {
    assertThrows(
        OuterWorldException.class,
        () -> CaptureWriter.create(folder.resolve("none/morning.jsonl"), header()));
  }

  @Test
  void aFullDiskIsToldWithTheNameOfTheCapture() {
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int value) throws IOException {
            throw new IOException("No space left on device");
          }
        };
    OuterWorldException refused =
        assertThrows(
            OuterWorldException.class, () -> new CaptureWriter(full, "morning.jsonl", header()));
    assertEquals(
        "The capture morning.jsonl could not be written: No space left on device.",
        refused.getMessage());
  }

  @Test
  void aLinkThatIsNotInTheHeaderIsRefused(@TempDir Path folder) {
    try (CaptureWriter writer = CaptureWriter.create(folder.resolve("morning.jsonl"), header())) {
      assertThrows(IllegalArgumentException.class, () -> writer.received("L3", chunk("31")));
    }
  }
}
