package datumpeg.bridge.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReturningLinkTest {
  private static final LinkAddress ADDRESS = LinkAddress.parse("serial:/dev/ttyUSB0");

  private final HandTimer timer = new HandTimer();
  private final Plug plug = new Plug();
  private final List<String> heard = new ArrayList<>();

  private final ReturningLinkListener listener =
      new ReturningLinkListener() {
        @Override
        public void received(Chunk chunk) {
          heard.add(new String(chunk.bytes().toArray(), StandardCharsets.UTF_8));
        }

        @Override
        public void lost(LinkLostException loss) {
          heard.add("lost");
        }

        @Override
        public void ended() {
          heard.add("ended");
        }

        @Override
        public void away(LinkUnavailableException why) {
          heard.add("away " + why.obstacle());
        }

        @Override
        public void returned() {
          heard.add("returned");
        }

        @Override
        public void silent(Duration since) {
          heard.add("silent " + since.toSeconds());
        }
      };

  /** The far end of a link: in or out, and what it sends. */
  private final class Plug implements LinkOpener {
    private boolean in = true;
    private Obstacle obstacle = Obstacle.MISSING;
    private String greeting = "";
    private boolean breaksAtOnce;
    private int openings;
    private int open;
    private LinkListener end = listener;

    @Override
    public Link open(LinkListener listener) {
      openings++;
      if (!in) {
        throw new LinkUnavailableException(obstacle, "not there");
      }
      open++;
      end = listener;
      if (!greeting.isEmpty()) {
        send(greeting);
      }
      if (breaksAtOnce) {
        pull();
        in = true;
      }
      return new Link() {
        @Override
        public LinkAddress address() {
          return ADDRESS;
        }

        @Override
        public void send(Bytes bytes) {
          heard.add("sent " + bytes.hex());
        }

        @Override
        public void close() {
          open--;
        }
      };
    }

    void send(String text) {
      Bytes bytes = Bytes.of(text.getBytes(StandardCharsets.UTF_8));
      end.received(new Chunk(bytes, timer.now(), timer.monotonicNanos(), Chunk.ONLY_CHANNEL));
    }

    void pull() {
      in = false;
      end.lost(new LinkLostException(ADDRESS.text(), 0, "pulled out", null));
    }
  }

  private ReturningLink open(Duration silence) {
    return ReturningLink.open(
        ADDRESS, plug, new ReturningLink.Terms(BackOff.USUAL, silence, timer, timer), listener);
  }

  @Test
  void pausesGrowToTheLongestAndStayThere() {
    BackOff backOff = new BackOff(Duration.ofMillis(250), Duration.ofSeconds(5));
    List<Long> pauses = new ArrayList<>();
    for (int attempt = 1; attempt <= 7; attempt++) {
      pauses.add(backOff.before(attempt).toMillis());
    }
    assertEquals(List.of(250L, 500L, 1000L, 2000L, 4000L, 5000L, 5000L), pauses);
    assertEquals(5000, backOff.before(Integer.MAX_VALUE).toMillis());
    assertThrows(
        IllegalArgumentException.class, () -> new BackOff(Duration.ZERO, Duration.ofSeconds(1)));
    assertThrows(
        IllegalArgumentException.class,
        () -> new BackOff(Duration.ofSeconds(2), Duration.ofSeconds(1)));
  }

  @Test
  void aLinkPulledOutComesBackAndSaysSo() {
    try (ReturningLink link = open(Duration.ZERO)) {
      plug.send("1 m");
      plug.pull();
      timer.pass(Duration.ofMinutes(1));
      int attempts = plug.openings;
      assertTrue(attempts >= 12 && attempts <= 17, attempts + " openings in a minute");
      plug.in = true;
      timer.pass(Duration.ofSeconds(5));
      plug.send("2 m");
      assertEquals(List.of("1 m", "lost", "returned", "2 m"), heard);
      assertEquals(ADDRESS, link.address());
    }
    assertTrue(timer.isClosed());
  }

  @Test
  void aThousandLossesLeaveOneOpenLinkAndLoseNothingThatWasSent() {
    List<String> expected = new ArrayList<>();
    try (ReturningLink link = open(Duration.ofMinutes(5))) {
      for (int i = 0; i < 1000; i++) {
        plug.send(i + " m");
        expected.add(i + " m");
        plug.pull();
        expected.add("lost");
        timer.pass(Duration.ofSeconds(1 + i % 20));
        plug.in = true;
        timer.pass(Duration.ofSeconds(5));
        expected.add("returned");
        assertEquals(1, plug.open - (i + 1), "a lost link closes itself; this one is open");
      }
      assertEquals(expected, heard);
      assertEquals(ADDRESS, link.address());
    }
  }

  @Test
  void whatStandsInTheWayIsToldWhenItChanges() {
    ReturningLink link = open(Duration.ZERO);
    plug.pull();
    timer.pass(Duration.ofSeconds(20));
    plug.obstacle = Obstacle.BUSY;
    timer.pass(Duration.ofSeconds(20));
    plug.in = true;
    timer.pass(Duration.ofSeconds(5));
    assertEquals(List.of("lost", "away BUSY", "returned"), heard);
    link.close();
  }

  @Test
  void aLinkThatBreaksWheneverItIsOpenedIsTriedEverMoreSlowlyAndToldOnce() {
    ReturningLink link = open(Duration.ZERO);
    plug.breaksAtOnce = true;
    plug.pull();
    plug.in = true;
    timer.pass(Duration.ofMinutes(1));
    assertEquals(List.of("lost"), heard);
    assertTrue(plug.openings <= 17, plug.openings + " openings in a minute");
    link.close();
  }

  @Test
  void bytesThatComeBeforeTheLinkIsHandedOverComeBehindItsReturn() {
    ReturningLink link = open(Duration.ZERO);
    plug.greeting = "hello";
    plug.pull();
    plug.in = true;
    timer.pass(Duration.ofSeconds(1));
    assertEquals(List.of("lost", "returned", "hello"), heard);
    link.close();
  }

  @Test
  void aLinkThatMustBeThereIsRefusedAndOneThatMayComeIsAwaited() {
    plug.in = false;
    assertThrows(LinkUnavailableException.class, () -> open(Duration.ZERO));
    HandTimer later = new HandTimer();
    ReturningLink link =
        ReturningLink.openOrAwait(
            ADDRESS,
            plug,
            new ReturningLink.Terms(BackOff.USUAL, Duration.ZERO, later, later),
            listener);
    assertThrows(LinkLostException.class, () -> link.send(Bytes.ofHex("44")));
    later.pass(Duration.ofSeconds(30));
    plug.in = true;
    later.pass(Duration.ofSeconds(5));
    link.send(Bytes.ofHex("44"));
    assertEquals(List.of("away MISSING", "returned", "sent 44"), heard);
    link.close();
  }

  @Test
  void aMeterThatSendsByItselfAndFallsSilentIsLostAndOpenedAfresh() {
    ReturningLink link = open(Duration.ofMinutes(5));
    for (int i = 0; i < 20; i++) {
      plug.send(".");
      timer.pass(Duration.ofMillis(500));
    }
    heard.clear();
    timer.pass(Duration.ofSeconds(16));
    assertEquals(List.of("lost", "returned"), heard);
    link.close();
  }

  @Test
  void aMeterThatSendsWhenAPersonMeasuresMayBeSilentUntilTheLimitAndIsOnlySpokenOf() {
    ReturningLink link = open(Duration.ofMinutes(5));
    for (int i = 0; i < 20; i++) {
      plug.send(".");
      timer.pass(Duration.ofSeconds(4));
    }
    heard.clear();
    timer.pass(Duration.ofMinutes(4));
    assertEquals(List.of(), heard);
    timer.pass(Duration.ofMinutes(30));
    assertEquals(List.of("silent 300"), heard);
    plug.send("1 m");
    timer.pass(Duration.ofMinutes(6));
    assertEquals(List.of("silent 300", "1 m", "silent 300"), heard);
    assertEquals(1, plug.openings);
    link.close();
  }

  @Test
  void piecesOfOneMessageAreNotASteadyMeter() {
    ReturningLink link = open(Duration.ZERO);
    for (int i = 0; i < 40; i++) {
      plug.send(".");
      timer.pass(Duration.ofMillis(10));
    }
    heard.clear();
    timer.pass(Duration.ofMinutes(10));
    assertEquals(List.of(), heard);
    link.close();
  }

  @Test
  void nothingIsHeardAfterClosing() {
    ReturningLink link = open(Duration.ofSeconds(10));
    link.close();
    link.close();
    plug.send("late");
    plug.pull();
    timer.pass(Duration.ofMinutes(10));
    assertEquals(List.of(), heard);
    assertEquals(1, plug.openings);
    assertFalse(heard.contains("returned"));
  }
}
