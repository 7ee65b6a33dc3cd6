package datumpeg.bridge.link.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.link.SerialSettings;
import java.io.IOException;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against a station that knows its answers by heart, over a pseudo-terminal. */
@Timeout(120)
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class ModbusLinkTest {
  /**
   * Two input registers from 0 of station 1, answered with 12.003 as float32: worked by hand with
   * the check sum of Modbus over serial line V1.02, 6.2.2.
   */
  private static final String QUESTION = "01040000000271cb";

  private static final String ANSWER = "01040441400c4a6a9b";

  private final BlockingQueue<Object> heard = new LinkedBlockingQueue<>();
  private FakeStation station;

  @BeforeEach
  void open() throws IOException {
    station = new FakeStation();
  }

  @AfterEach
  void close() throws IOException {
    station.close();
  }

  private ModbusLink link(RegisterBlock block) {
    return ModbusLink.open(
        new LinkAddress.Serial(station.port(), SerialSettings.DEFAULT),
        block,
        LinkClock.system(),
        new LinkListener() {
          @Override
          public void received(Chunk chunk) {
            heard.add(chunk);
          }

          @Override
          public void lost(LinkLostException loss) {
            heard.add(loss);
          }

          @Override
          public void ended() {
            heard.add("ended");
          }
        });
  }

  private static RegisterBlock inputs(int everyMillis) {
    return new RegisterBlock(1, RegisterBlock.Table.INPUT, 0, 2, everyMillis);
  }

  private <T> T next(Class<T> kind) throws InterruptedException {
    Object next = heard.poll(60, TimeUnit.SECONDS);
    assertTrue(kind.isInstance(next), "heard " + next);
    return kind.cast(next);
  }

  private static String message(LinkLostException loss) {
    return String.valueOf(loss.getMessage());
  }

  @Test
  void theRegistersComeEachTimeTheyAreAskedFor() throws InterruptedException {
    station.answers(QUESTION, ANSWER);
    try (ModbusLink link = link(inputs(0))) {
      for (int i = 0; i < 50; i++) {
        link.send(Bytes.empty());
        Chunk chunk = next(Chunk.class);
        assertEquals("41400c4a", chunk.bytes().hex());
        assertEquals("input-0@1", chunk.channel());
      }
      assertEquals(0, heard.size(), "more was told than was asked for");
      assertTrue(station.questionCount() >= 50, station.questionCount() + " questions");
    }
  }

  @Test
  void theyAreAskedForByThemselvesWhereTheProfileSaysHowOften() throws InterruptedException {
    station.answers(QUESTION, ANSWER);
    try (ModbusLink link = link(inputs(5))) {
      assertEquals("serial:" + station.port(), link.address().text());
      for (int i = 0; i < 20; i++) {
        next(Chunk.class);
      }
    }
    heard.clear();
    TimeUnit.MILLISECONDS.sleep(100);
    assertEquals(0, heard.size(), "a closed link still speaks");
  }

  @Test
  void aMissingAnswerIsAskedForAgainAndASilentStationIsLost() throws InterruptedException {
    try (ModbusLink link = link(inputs(1))) {
      while (station.questionCount() < 2) {
        LockSupport.parkNanos(1_000_000);
      }
      station.answers(QUESTION, ANSWER);
      next(Chunk.class);
      station.answers(QUESTION, "01040441400c4a6a9c"); // its check sum is wrong
      Object last = heard.poll(60, TimeUnit.SECONDS);
      while (last instanceof Chunk) {
        last = heard.poll(60, TimeUnit.SECONDS);
      }
      LinkLostException loss = (LinkLostException) last;
      assertTrue(message(loss).contains("did not answer 3 times"), message(loss));
      assertThrows(LinkLostException.class, () -> link.send(Bytes.empty()));
    }
  }

  @ParameterizedTest
  @CsvSource({"018402c2c1, exception 2"})
  void aStationThatRefusesTheRegistersIsSaidAtOnce(String answer, String said)
      throws InterruptedException {
    station.answers(QUESTION, answer);
    try (ModbusLink link = link(inputs(0))) {
      link.send(Bytes.empty());
      String message = message(next(LinkLostException.class));
      assertTrue(message.contains(said), message);
      assertTrue(message.contains("station 1 on serial:"), message);
    }
  }

  @Test
  void aPulledCableIsALostLink() throws Exception {
    station.answers(QUESTION, ANSWER);
    try (ModbusLink link = link(inputs(5))) {
      next(Chunk.class);
      station.close();
      Object last = heard.poll(60, TimeUnit.SECONDS);
      while (last instanceof Chunk) {
        last = heard.poll(60, TimeUnit.SECONDS);
      }
      LinkLostException loss = (LinkLostException) last;
      assertTrue(message(loss).contains("unplugged"), message(loss));
      assertEquals("serial:" + station.port(), link.address().text());
    }
  }

  @Test
  void holdingRegistersAreAnotherQuestion() throws InterruptedException {
    // Three holding registers from 107 of station 17: the published example of the protocol.
    station.answers("1103006b00037687", "110306ae415652434049ad");
    RegisterBlock block = new RegisterBlock(17, RegisterBlock.Table.HOLDING, 107, 3, 0);
    try (ModbusLink link = link(block)) {
      link.send(Bytes.empty());
      assertEquals("ae4156524340", next(Chunk.class).bytes().hex());
    }
  }

  @Test
  void aPortThatIsMissingIsSaid() {
    LinkAddress.Serial missing = new LinkAddress.Serial("/dev/ttyNoSuch7", SerialSettings.DEFAULT);
    LinkListener none = new HeardNothing();
    assertThrows(
        LinkUnavailableException.class,
        () -> ModbusLink.open(missing, inputs(0), LinkClock.system(), none));
  }

  private static final class HeardNothing implements LinkListener {
    @Override
    public void received(Chunk chunk) {}

    @Override
    public void lost(LinkLostException loss) {}

    @Override
    public void ended() {}
  }
}
