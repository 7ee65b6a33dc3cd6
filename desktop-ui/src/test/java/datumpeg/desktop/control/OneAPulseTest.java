package datumpeg.desktop.control;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.desktop.app.HeadlessToolkit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class OneAPulseTest {
  private final List<String> done = new ArrayList<>();
  private final OneAPulse pieces = new OneAPulse();

  @BeforeAll
  static void start() {
    HeadlessToolkit.start();
  }

  private List<Runnable> pieces(String... names) {
    return List.of(names).stream().<Runnable>map(name -> () -> done.add(name)).toList();
  }

  @Test
  void allAreDoneInTheirOrderNoneAtOnce() {
    HeadlessToolkit.run(
        () -> {
          pieces.run(pieces("a", "b", "c"));
          assertEquals(List.of(), done);
        });
    HeadlessToolkit.until("all", () -> done.equals(List.of("a", "b", "c")));
  }

  @Test
  void whatStillWaitsGivesWayToWhatIsNewer() {
    HeadlessToolkit.run(
        () -> {
          pieces.run(pieces("a", "b"));
          pieces.run(pieces("c", "d"));
        });
    HeadlessToolkit.until("the newer", () -> done.equals(List.of("c", "d")));
  }

  @Test
  void nothingToDoIsNothingDone() {
    HeadlessToolkit.run(() -> pieces.run(List.of()));
    assertEquals(List.of(), HeadlessToolkit.on(() -> List.copyOf(done)));
  }
}
