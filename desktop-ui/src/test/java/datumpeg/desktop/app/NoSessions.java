package datumpeg.desktop.app;

import datumpeg.desktop.measure.SessionWish;
import datumpeg.desktop.measure.Sessions;
import java.util.List;
import java.util.function.Consumer;

/** For windows on a record that is no file: nothing can be measured, and that is said. */
final class NoSessions implements Sessions {
  @Override
  public void look(String job, Consumer<Choices> found) {
    found.accept(new Choices(job, List.of(), List.of(), List.of(), "There is no record file."));
  }

  @Override
  public void targets(SessionWish wish, Consumer<TargetStands> found) {
    throw new UnsupportedOperationException("nothing is measured in this test");
  }

  @Override
  public void listen(Consumer<Heard> heard) {
    heard.accept(new Heard(List.of(), 1, 1, "There is no Bluetooth in this test."));
  }

  @Override
  public void stopListening() {
    // Nothing listens.
  }

  @Override
  public Session begin(SessionWish wish, Told told) {
    throw new UnsupportedOperationException("nothing is measured in this test");
  }

  @Override
  public void close() {}
}
