package datumpeg.bridge.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.emulate.EmulatedMeter.Chatter;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.replay.CaptureEntry;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureReader;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CaptureComposerTest {
  private static final Instant START = Instant.parse("2026-03-02T08:15:00Z");

  private static CaptureComposer composer(long seed) {
    return new CaptureComposer("larkrise-01", "arrival", seed)
        .meter("L1", "serial:/dev/ttyUSB0", "laser", Dialect.METRES, Chatter.TALKATIVE)
        .meter("L2", "serial:/dev/ttyUSB1", "tilt", Dialect.DEGREES, Chatter.SILENT)
        .keyboard("K")
        .reading("L1", "slab.A1-slab.B1", null, 9.0012, START)
        .reading("L2", "column.A2/across", 1, 0.01, START.plusSeconds(10))
        .reading("L2", "column.A2/across", 2, -0.012, START.plusSeconds(20))
        .act(
            Kind.SKIP, "slab.A1-slab.A4", null, "stack of sheets in the way", START.plusSeconds(30))
        .reading("L1", "slab.B1-slab.B4", null, 17.9986, START.plusSeconds(40));
  }

  @Test
  void aComposedCaptureReadsBackAsTheReadingsGiven() {
    List<String> told = new ArrayList<>();
    try (CaptureReader reader =
        new CaptureReader(new ByteArrayInputStream(composer(5).compose().toArray()), "composed")) {
      assertEquals("larkrise-01", reader.header().job());
      assertEquals("arrival", reader.header().stage());
      assertEquals(3, reader.header().links().size());
      Map<String, MeterStream> streams = new HashMap<>();
      Optional<CaptureEntry> entry = reader.next();
      while (entry.isPresent()) {
        if (entry.get() instanceof Act act) {
          told.add(act.kind() + " " + act.target() + " " + act.face());
        } else if (entry.get() instanceof Transfer transfer) {
          streams
              .computeIfAbsent(
                  transfer.link(), link -> new MeterStream(MeterProfiles.GENERAL_TEXT_LINE))
              .accept(transfer.bytes(), transfer.channel())
              .forEach(message -> addValue(told, message));
        }
        entry = reader.next();
      }
    }
    assertEquals(
        List.of(
            "TARGET slab.A1-slab.B1 null",
            "9.0012",
            "ACCEPT slab.A1-slab.B1 null",
            "TARGET column.A2/across 1",
            "+0.573",
            "ACCEPT column.A2/across 1",
            "TARGET column.A2/across 2",
            "-0.688",
            "ACCEPT column.A2/across 2",
            "SKIP slab.A1-slab.A4 null",
            "TARGET slab.B1-slab.B4 null",
            "17.9986",
            "ACCEPT slab.B1-slab.B4 null"),
        told);
  }

  private static void addValue(List<String> told, MeterStream.Message message) {
    if (message.decoded() instanceof Measured measured) {
      told.add(measured.valueText());
    }
  }

  @Test
  void timesRunForwardFromTheTimesGiven() {
    try (CaptureReader reader =
        new CaptureReader(new ByteArrayInputStream(composer(5).compose().toArray()), "composed")) {
      CaptureEntry last = reader.next().orElseThrow();
      assertEquals(START, last.time());
      assertEquals(0, last.monotonicNanos());
      for (Optional<CaptureEntry> next = reader.next(); next.isPresent(); next = reader.next()) {
        assertTrue(next.get().time().compareTo(last.time()) >= 0);
        assertTrue(next.get().monotonicNanos() >= last.monotonicNanos());
        last = next.get();
      }
      assertEquals(41, last.time().getEpochSecond() - START.getEpochSecond());
    }
  }

  @Test
  void theSameSeedGivesTheSameBytes() {
    Bytes first = composer(5).compose();
    assertEquals(first, composer(5).compose());
    assertTrue(!first.equals(composer(6).compose()));
  }

  @Test
  void aReadingNeedsItsMeter() {
    assertThrows(
        IllegalArgumentException.class,
        () -> composer(1).reading("K", "slab.A1-slab.B1", null, 1, START));
  }
}
