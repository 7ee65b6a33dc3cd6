package datumpeg.desktop.background;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.junit.jupiter.api.Test;

class NewestValueTest {
  private final Queue<Runnable> receivingThread = new ArrayDeque<>();
  private final List<Integer> received = new ArrayList<>();
  private final NewestValue<Integer> handOver =
      new NewestValue<>(receivingThread::add, received::add);

  private void turn() {
    Runnable task = receivingThread.poll();
    if (task != null) {
      task.run();
    }
  }

  @Test
  void onlyTheNewestOfSeveralWaitingValuesArrives() {
    handOver.put(1);
    handOver.put(2);
    handOver.put(3);
    assertEquals(1, receivingThread.size(), "one task waits however many values come");
    turn();
    assertEquals(List.of(3), received);
  }

  @Test
  void valueAfterADeliveryIsDeliveredToo() {
    handOver.put(1);
    turn();
    handOver.put(2);
    turn();
    assertEquals(List.of(1, 2), received);
  }

  @Test
  void valuePutByTheReceiverItselfIsNotLost() {
    List<Integer> seen = new ArrayList<>();
    List<NewestValue<Integer>> self = new ArrayList<>();
    self.add(
        new NewestValue<>(
            receivingThread::add,
            value -> {
              seen.add(value);
              if (value < 3) {
                self.get(0).put(value + 1);
              }
            }));
    self.get(0).put(1);
    turn();
    turn();
    turn();
    assertEquals(List.of(1, 2, 3), seen);
  }
}
