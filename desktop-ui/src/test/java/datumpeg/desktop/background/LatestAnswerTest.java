package datumpeg.desktop.background;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class LatestAnswerTest {
  @Test
  void onlyTheNewestOfWhatWaitsIsWorkedOn() {
    List<Runnable> work = new ArrayList<>();
    List<Integer> answered = new ArrayList<>();
    LatestAnswer<Integer, Integer> answers =
        new LatestAnswer<>(work::add, Runnable::run, question -> 10 * question, answered::add);
    answers.ask(1);
    answers.ask(2);
    answers.ask(3);
    assertEquals(1, work.size(), "those that wait are one piece of work");
    work.get(0).run();
    assertEquals(List.of(30), answered);
    answers.ask(4);
    work.get(1).run();
    assertEquals(List.of(30, 40), answered);
  }

  @Test
  void workerIsADaemonThreadOfThatName() throws InterruptedException {
    CountDownLatch done = new CountDownLatch(1);
    List<Thread> seen = new ArrayList<>();
    LatestAnswer.worker("counting")
        .execute(
            () -> {
              seen.add(Thread.currentThread());
              done.countDown();
            });
    assertTrue(done.await(60, TimeUnit.SECONDS));
    assertEquals("counting", seen.get(0).getName());
    assertTrue(seen.get(0).isDaemon());
  }
}
