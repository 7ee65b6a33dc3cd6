package datumpeg.bridge.collect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.collect.MeterFeed.Timing;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class MeterFeedTest {
  private static final Instant START = Instant.parse("2026-03-02T08:15:00Z");

  private final List<String> putAside = new ArrayList<>();
  private final MeterFeed feed = new MeterFeed(new Listening(putAside), LinkTerms.USUAL.apart());
  private long millis;

  private record Listening(List<String> putAside) implements SessionWatcher {
    @Override
    public void asking(Wanted wanted, int leftAfterThis) {}

    @Override
    public void recorded(ReadingEntry reading) {}

    @Override
    public void withdrawn(ReadingEntry reading) {}

    @Override
    public void held(GuideState.Question question) {}

    @Override
    public void waiting(int count, String why) {}

    @Override
    public void drained() {}

    @Override
    public void captureEnded(String why) {}

    @Override
    public void putAside(String why) {
      putAside.add(why);
    }

    @Override
    public void lost(LinkLostException loss, int droppedByteCount) {}
  }

  @BeforeEach
  void open() {
    for (String name : List.of("L1", "L2")) {
      feed.add(name, "serial:/dev/" + name, "", new MeterStream(MeterProfiles.GENERAL_TEXT_LINE));
    }
  }

  private List<Timing> came(String link, String channel, String text) {
    Chunk chunk =
        new Chunk(
            Bytes.of(text.getBytes(StandardCharsets.UTF_8)),
            START.plusMillis(millis),
            millis * 1_000_000,
            channel);
    return feed.received(link, chunk, "test").stream().map(MeterFeed.Arrival::timing).toList();
  }

  private List<Timing> came(String text) {
    return came("L1", Chunk.ONLY_CHANNEL, text);
  }

  @Test
  void valuesASecondApartAreOnTimeAndSoonerOnesAreNot() {
    assertEquals(List.of(Timing.ON_TIME), came("1 m\n"));
    millis += 1000;
    assertEquals(List.of(Timing.ON_TIME), came("2 m\n"));
    millis += 999;
    assertEquals(List.of(Timing.BEHIND_ANOTHER), came("3 m\n"));
    millis += 999;
    assertEquals(List.of(Timing.BEHIND_ANOTHER), came("4 m\n"), "a meter that sends by itself");
  }

  @Test
  void anotherKindOfValueAndAnotherMeterAreTheirOwnMatter() {
    assertEquals(List.of(Timing.ON_TIME, Timing.ON_TIME), came("1 m\n0.5 deg\n"));
    assertEquals(List.of(Timing.ON_TIME), came("L2", Chunk.ONLY_CHANNEL, "1 m\n"));
  }

  @Test
  void valuesInOnePieceAreTogether() {
    assertEquals(List.of(Timing.TOGETHER, Timing.BEHIND_ANOTHER), came("1 m\n2 m\n"));
  }

  @Test
  void theFirstSecondBehindAReturnMayBringOldValues() {
    came("1 m\n2");
    assertEquals(1, feed.lost("L1").length());
    millis += 500;
    feed.returned("L1", millis * 1_000_000);
    millis += 999;
    assertEquals(List.of(Timing.BEHIND_RETURN), came("3 m\n"));
    millis += 1000;
    assertEquals(List.of(Timing.ON_TIME), came("4 m\n"));
  }

  @Test
  void aMessageDeliveredTwiceIsRecognisedWhereLinksHaveMessages() {
    assertEquals(List.of(Timing.ON_TIME), came("L1", "0000abcd", "1 m\n"));
    millis += 50;
    assertEquals(List.of(Timing.REPEATED), came("L1", "0000abcd", "1 m\n"));
    assertEquals(List.of(Timing.REPEATED), came("L1", "0000abcd", "1 m\n"), "three times");
    assertEquals(List.of(Timing.BEHIND_ANOTHER), came("L1", "0000abcd", "2 m\n"));
    millis += 2000;
    assertEquals(List.of(Timing.ON_TIME), came("L1", "0000abcd", "2 m\n"), "measured again");
    millis += 2000;
    assertEquals(List.of(Timing.ON_TIME), came("1 m\n"));
    assertEquals(
        List.of(Timing.BEHIND_ANOTHER), came("1 m\n"), "a stream of bytes repeats nothing");
  }

  @Test
  void noiseWithoutEndIsSaidAFewTimesASecond() {
    for (int i = 0; i < 3000; i++) {
      came("ERROR 17\n");
      millis += 1;
    }
    assertTrue(putAside.size() >= 15 && putAside.size() <= 20, putAside.size() + " sentences");
    assertTrue(
        putAside.contains("995 more of serial:/dev/L1 that were no readings"), putAside::toString);
  }

  @Test
  void aLineOfAMegabyteIsSaidOnceAndTheLineBehindItIsRead() {
    String line = "9".repeat(1 << 20);
    for (int i = 0; i < line.length(); i += 4096) {
      assertEquals(List.of(), came(line.substring(i, i + 4096)));
    }
    assertEquals(List.of(Timing.ON_TIME), came(" m\n12.003 m\n"));
    assertEquals(List.of("not a reading: a line too long for this meter"), putAside);
  }
}
