package datumpeg.bridge.link.serial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import datumpeg.bridge.link.RecordingListener;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A real pseudo-terminal: the test holds its master, the link opens its other end as a port. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class SerialLinkTest {
  private static final Instant NOW = Instant.parse("2026-03-02T08:15:00Z");
  private static final LinkClock CLOCK =
      new LinkClock() {
        @Override
        public Instant now() {
          return NOW;
        }

        @Override
        public long monotonicNanos() {
          return 42;
        }
      };

  private Pty master;

  @BeforeEach
  void openMaster() throws IOException {
    master = new Pty();
  }

  @AfterEach
  void closeMaster() throws IOException {
    if (!master.isClosed()) {
      master.close();
    }
  }

  private LinkAddress.Serial address() {
    return new LinkAddress.Serial(master.getSlaveName(), SerialSettings.DEFAULT);
  }

  private void meterSends(String text) throws IOException {
    master.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    master.getOutputStream().flush();
  }

  private static LinkUnavailableException refused(LinkAddress.Serial address) {
    return assertThrows(
        LinkUnavailableException.class,
        () -> SerialLink.open(address, CLOCK, new RecordingListener()).close());
  }

  @Test
  void bytesArriveAsTheyWereSentWithTheirTimes() throws Exception {
    RecordingListener listener = new RecordingListener();
    try (SerialLink link = SerialLink.open(address(), CLOCK, listener)) {
      meterSends("12.345 m\r\n\u0000\u001B-0.5°");
      Chunk chunk = listener.awaitChunk();
      assertEquals(NOW, chunk.receivedAt());
      assertEquals(42, chunk.monotonicNanos());
      assertEquals(Chunk.ONLY_CHANNEL, chunk.channel());
      byte[] sent = "12.345 m\r\n\u0000\u001B-0.5°".getBytes(StandardCharsets.UTF_8);
      Bytes rest = listener.awaitBytes(sent.length - chunk.bytes().length());
      assertEquals(Bytes.of(sent), chunk.bytes().plus(rest));
      assertEquals(address(), link.address());
    }
    assertFalse(listener.heardOfAnEnd(), "a link closed on purpose is not lost");
  }

  @Test
  void linesSplitAnywhereAreReadWhole() throws Exception {
    RecordingListener listener = new RecordingListener();
    MeterStream stream = new MeterStream(MeterProfiles.GENERAL_TEXT_LINE);
    List<Double> values = new ArrayList<>();
    try (SerialLink link = SerialLink.open(address(), CLOCK, listener)) {
      assertEquals(address(), link.address());
      String lines = "1.5 m\r\n2,5 m\r3.5 m\n";
      for (int split = 1; split < lines.length(); split++) {
        for (String part : List.of(lines.substring(0, split), lines.substring(split))) {
          meterSends(part);
          for (MeterStream.Message message :
              stream.accept(listener.awaitBytes(part.length()), Chunk.ONLY_CHANNEL)) {
            values.add(assertInstanceOf(Measured.class, message.decoded()).siValue());
          }
        }
        assertEquals(List.of(1.5, 2.5, 3.5), values);
        values.clear();
      }
    }
  }

  @Test
  void aPortPulledOutMidLineIsLostAndTheHalfLineIsNoReading() throws Exception {
    RecordingListener listener = new RecordingListener();
    MeterStream stream = new MeterStream(MeterProfiles.GENERAL_TEXT_LINE);
    try (SerialLink link = SerialLink.open(address(), CLOCK, listener)) {
      meterSends("12.345 m\r\n9.87");
      List<MeterStream.Message> messages =
          stream.accept(listener.awaitBytes(14), Chunk.ONLY_CHANNEL);
      assertEquals(1, messages.size());
      master.close();
      LinkLostException loss = assertInstanceOf(LinkLostException.class, listener.awaitEnd());
      assertEquals(14, loss.receivedByteCount());
      assertEquals(address().text(), loss.address());
      assertEquals(3, loss.exitStatus());
      assertTrue(String.valueOf(loss.getMessage()).contains(address().path()), loss.getMessage());
      assertEquals(Bytes.of("9.87".getBytes(StandardCharsets.UTF_8)), stream.lost());
      assertEquals(1, stream.counts().readings());
      assertEquals(1, stream.counts().incomplete());
      assertThrows(LinkLostException.class, () -> link.send(Bytes.ofHex("440d")));
    }
  }

  @Test
  void afterALossThePortIsOpenedAgain() throws Exception {
    RecordingListener listener = new RecordingListener();
    SerialLink link = SerialLink.open(address(), CLOCK, listener);
    master.close();
    assertInstanceOf(LinkLostException.class, listener.awaitEnd());
    link.close();
    master = new Pty();
    RecordingListener again = new RecordingListener();
    try (SerialLink reopened = SerialLink.open(address(), CLOCK, again)) {
      assertEquals(address(), reopened.address());
      meterSends("7 m\n");
      assertEquals(4, again.awaitBytes(4).length());
    }
  }

  @Test
  void aPortClosedIsFreeAgain() throws Exception {
    for (int time = 0; time < 2; time++) {
      RecordingListener listener = new RecordingListener();
      try (SerialLink link = SerialLink.open(address(), CLOCK, listener)) {
        assertEquals(address(), link.address());
        meterSends("7 m\n");
        assertEquals(4, listener.awaitBytes(4).length());
      }
    }
  }

  @Test
  void aCommandReachesTheMeterAsSent() throws Exception {
    try (SerialLink link = SerialLink.open(address(), CLOCK, new RecordingListener())) {
      link.send(Bytes.ofHex("440d0a00ff"));
      byte[] heard = master.getInputStream().readNBytes(5);
      assertEquals("440d0a00ff", Bytes.of(heard).hex());
    }
  }

  @Test
  void aMissingPortIsNamedWithThePortsThatExist() {
    LinkUnavailableException refused =
        refused(new LinkAddress.Serial("/dev/ttyNONE7", SerialSettings.DEFAULT));
    assertEquals(Obstacle.MISSING, refused.obstacle());
    String message = String.valueOf(refused.getMessage());
    assertTrue(
        message.startsWith("There is no serial port /dev/ttyNONE7; this machine has "), message);
    for (SerialPorts.Found port : SerialPorts.list()) {
      assertTrue(message.contains(port.path()), message);
    }
  }

  @Test
  void aFileThatIsNoPortIsRefused(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("notes.txt"), "12.345 m\n");
    for (Path path : List.of(file, folder)) {
      LinkUnavailableException refused =
          refused(new LinkAddress.Serial(path.toString(), SerialSettings.DEFAULT));
      assertEquals(Obstacle.REFUSED, refused.obstacle());
      assertEquals(path + " is there, and it is not a serial port.", refused.getMessage());
    }
    assertEquals("12.345 m\n", Files.readString(file));
  }

  @Test
  void aPortThisProgramHasOpenIsBusy() {
    try (SerialLink holder = SerialLink.open(address(), CLOCK, new RecordingListener())) {
      assertEquals(address(), holder.address());
      assertEquals(Obstacle.BUSY, refused(address()).obstacle());
    }
  }

  @Test
  void aPortAnotherProcessHasOpenIsBusyAndFreeWhenThatEnds() throws Exception {
    Process holder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path").replace("\n", File.pathSeparator),
                PortHolder.class.getName(),
                master.getSlaveName())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      BufferedReader said =
          new BufferedReader(
              new InputStreamReader(holder.getInputStream(), StandardCharsets.UTF_8));
      assertEquals("open " + address().text(), said.readLine());
      LinkUnavailableException refused = refused(address());
      assertEquals(Obstacle.BUSY, refused.obstacle());
      assertEquals(3, refused.exitStatus());
      assertTrue(String.valueOf(refused.getMessage()).contains(address().path()));
      holder.getOutputStream().close();
      assertTrue(holder.waitFor(60, TimeUnit.SECONDS), "the other process did not end");
    } finally {
      holder.destroyForcibly();
    }
    try (SerialLink free = SerialLink.open(address(), CLOCK, new RecordingListener())) {
      assertEquals(address(), free.address());
    }
  }
}
