package datumpeg.bridge.link.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.RecordingListener;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayLinkTest {
  private static final String CAPTURE =
      """
      {"capture":1,"job":"j","stage":"s","links":{"L1":{"link":"serial:a"},"L2":{"link":"serial:b"}}}
      {"n":1,"t":"2026-03-02T08:15:00Z","mono_ns":10,"act":"target","target":"slab.A1-slab.B1"}
      {"n":2,"t":"2026-03-02T08:15:01Z","mono_ns":20,"link":"L1","dir":"tx","channel":"data","hex":"44"}
      {"n":3,"t":"2026-03-02T08:15:02Z","mono_ns":30,"link":"L1","dir":"rx","channel":"data","hex":"312e"}
      {"n":4,"t":"2026-03-02T08:15:03Z","mono_ns":40,"link":"L2","dir":"rx","channel":"data","hex":"ff"}
      {"n":5,"t":"2026-03-02T08:15:04Z","mono_ns":50,"link":"L1","dir":"rx","channel":"data","hex":"350a"}
      """;

  private static LinkAddress.Replay capture(Path folder, String text) throws IOException {
    return new LinkAddress.Replay(Files.writeString(folder.resolve("c.jsonl"), text));
  }

  @Test
  void theReceivedBytesOfOneLinkComeInOrderWithTheirTimesAndThenTheEnd(@TempDir Path folder)
      throws Exception {
    RecordingListener listener = new RecordingListener();
    LinkAddress.Replay address = capture(folder, CAPTURE);
    try (ReplayLink link = ReplayLink.open(address, "L1", listener)) {
      assertEquals("ended", listener.awaitEnd());
      assertEquals(
          new Chunk(Bytes.ofHex("312e"), Instant.parse("2026-03-02T08:15:02Z"), 30, "data"),
          listener.awaitChunk());
      assertEquals(
          new Chunk(Bytes.ofHex("350a"), Instant.parse("2026-03-02T08:15:04Z"), 50, "data"),
          listener.awaitChunk());
      assertTrue(listener.restOfBytes().isEmpty());
      assertEquals(address, link.address());
    }
  }

  @Test
  void aTornLastLineEndsTheReplayAsItsEndWould(@TempDir Path folder) throws Exception {
    RecordingListener listener = new RecordingListener();
    LinkAddress.Replay address = capture(folder, CAPTURE.substring(0, CAPTURE.length() - 9));
    try (ReplayLink link = ReplayLink.open(address, "L1", listener)) {
      assertEquals(address, link.address());
      assertEquals("ended", listener.awaitEnd());
      assertEquals("312e", listener.restOfBytes().hex());
    }
  }

  @Test
  void damageFurtherOnLosesTheLinkWithTheDamageAsItsCause(@TempDir Path folder) throws Exception {
    RecordingListener listener = new RecordingListener();
    LinkAddress.Replay address = capture(folder, CAPTURE.replace("\"n\":4", "\"n\":7"));
    try (ReplayLink link = ReplayLink.open(address, "L1", listener)) {
      assertEquals(address, link.address());
      LinkLostException loss = assertInstanceOf(LinkLostException.class, listener.awaitEnd());
      assertInstanceOf(InputException.class, loss.getCause());
      assertTrue(String.valueOf(loss.getMessage()).contains("line 5"), loss.getMessage());
      assertEquals(2, loss.receivedByteCount());
    }
  }

  @Test
  void aDefectOfTheListenerEndsTheReplayAndIsTold(@TempDir Path folder) throws Exception {
    RecordingListener told = new RecordingListener();
    LinkListener failing =
        new LinkListener() {
          @Override
          public void received(Chunk chunk) {
            throw new IllegalStateException("a defect planted by the test");
          }

          @Override
          public void lost(LinkLostException loss) {
            told.lost(loss);
          }

          @Override
          public void ended() {
            told.ended();
          }
        };
    try (ReplayLink link = ReplayLink.open(capture(folder, CAPTURE), "L1", failing)) {
      LinkLostException loss = assertInstanceOf(LinkLostException.class, told.awaitEnd());
      assertInstanceOf(IllegalStateException.class, loss.getCause());
      assertEquals(link.address().text(), loss.address());
    }
  }

  @Test
  void aLinkTheCaptureDoesNotHaveIsNamedWithThoseItHas(@TempDir Path folder) throws IOException {
    LinkAddress.Replay address = capture(folder, CAPTURE);
    InputException refused =
        assertThrows(
            InputException.class,
            () -> ReplayLink.open(address, "L9", new RecordingListener()).close());
    assertTrue(String.valueOf(refused.getMessage()).endsWith("has no link 'L9'; it has L1, L2."));
  }
}
