package datumpeg.desktop.background;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class RepeatedWorkTest {
  private static final Duration LONG = Duration.ofHours(1);
  private final BlockingQueue<String> told = new LinkedBlockingQueue<>();

  private String next() throws InterruptedException {
    String word = told.poll(60, TimeUnit.SECONDS);
    assertNotNull(word, "nothing was done within 60 s");
    return word;
  }

  @Test
  void doesItAgainAfterThePause() throws InterruptedException {
    try (RepeatedWork work = work(Duration.ofMillis(1), () -> told.add("turn"))) {
      work.start();
      for (int i = 0; i < 5; i++) {
        assertEquals("turn", next());
      }
    }
  }

  @Test
  void hurryEndsThePause() throws InterruptedException {
    try (RepeatedWork work = work(LONG, () -> told.add("turn"))) {
      work.start();
      next();
      work.hurry();
      assertEquals("turn", next());
    }
  }

  @Test
  void turnThatThrowsIsToldAndTheNextComes() throws InterruptedException {
    AtomicInteger turns = new AtomicInteger();
    RepeatedWork work =
        work(
            Duration.ofMillis(1),
            () -> {
              if (turns.incrementAndGet() == 1) {
                throw new IllegalStateException("first");
              }
              told.add("turn");
            });
    try (work) {
      work.start();
      assertEquals("defect first", next());
      assertEquals("turn", next());
    }
  }

  @Test
  void classThatDoesNotLoadDoesNotEndTheThreadUnsaid() throws InterruptedException {
    RepeatedWork work =
        work(
            Duration.ofMillis(1),
            () -> {
              throw new NoClassDefFoundError("invented");
            });
    try (work) {
      work.start();
      assertEquals("defect invented", next());
      assertEquals("defect invented", next());
    }
  }

  @Test
  void closingDoesTheLastWorkOnTheSameThreadAndNoTurnFollows() throws InterruptedException {
    List<Thread> threads = new ArrayList<>();
    RepeatedWork work =
        new RepeatedWork(
            "test",
            LONG,
            () -> {
              threads.add(Thread.currentThread());
              told.add("turn");
            },
            () -> {
              threads.add(Thread.currentThread());
              told.add("last");
            },
            defect -> told.add("defect"));
    work.start();
    next();
    work.close();
    assertEquals("last", next());
    assertEquals(2, threads.size());
    assertSame(threads.get(0), threads.get(1));
    assertTrue(threads.get(0).isDaemon());
    assertTrue(told.isEmpty());
  }

  private RepeatedWork work(Duration pause, Runnable turn) {
    return new RepeatedWork(
        "test", pause, turn, () -> {}, defect -> told.add("defect " + defect.getMessage()));
  }
}
