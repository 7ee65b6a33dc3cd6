package datumpeg.desktop.background;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class LongWorkTest {
  private final BlockingQueue<Runnable> received = new LinkedBlockingQueue<>();
  private final List<WorkState> seen = new ArrayList<>();
  private final List<Object> ends = new ArrayList<>();
  private final LongWork work = new LongWork(received::add, seen::add);

  /** Runs what the receiving thread was given until something ended or the work is over. */
  private void receiveUntilOver() throws InterruptedException {
    while (seen.isEmpty() || seen.get(seen.size() - 1).isRunning()) {
      Runnable next = received.poll(60, TimeUnit.SECONDS);
      assertTrue(next != null, "nothing came back from the other thread");
      next.run();
    }
  }

  @Test
  void resultComesBackOnTheReceivingThread() throws InterruptedException {
    Thread here = Thread.currentThread();
    assertTrue(
        work.start(
            "Counting",
            progress -> {
              assertFalse(Thread.currentThread() == here, "the work runs on the receiving thread");
              progress.at(1, 4);
              return 42;
            },
            ends::add,
            ends::add));
    receiveUntilOver();
    assertEquals(List.of(42), ends);
    assertEquals(WorkState.NOTHING, seen.get(seen.size() - 1));
  }

  @Test
  void workThatIsStoppedEndsAtItsNextStepAndTellsNobody() throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    work.start(
        "Copying",
        progress -> {
          for (long i = 0; ; i++) {
            progress.at(i, 0);
            begun.countDown();
            Thread.sleep(1);
          }
        },
        ends::add,
        ends::add);
    assertTrue(begun.await(60, TimeUnit.SECONDS));
    assertFalse(work.start("Another", progress -> 1, ends::add, ends::add));
    work.cancel();
    receiveUntilOver();
    assertEquals(List.of(), ends);
    assertTrue(work.start("Another", progress -> 1, ends::add, ends::add));
  }

  @Test
  void whatTheWorkThrowsIsTold() throws InterruptedException {
    work.start(
        "Failing",
        progress -> {
          throw new java.io.IOException("no room");
        },
        ends::add,
        failure -> ends.add(failure.getMessage()));
    receiveUntilOver();
    assertEquals(List.of("no room"), ends);
  }

  @Test
  void fractionIsUnknownWithoutAWhole() {
    assertEquals(-1, new WorkState("x", 3, 0).fraction());
    assertEquals(0.25, new WorkState("x", 1, 4).fraction());
    assertEquals(1, new WorkState("x", 5, 4).fraction());
  }
}
