package datumpeg.desktop.app;

import datumpeg.desktop.form.JobShelf;
import java.nio.file.Path;
import java.util.Optional;

/** For screens that are only looked at. */
final class NoShelf implements JobShelf {
  @Override
  public Optional<String> newest(String job) {
    return Optional.empty();
  }

  @Override
  public String read(Path file) {
    throw new AssertionError("nothing is read here: " + file);
  }

  @Override
  public Taken take(String text, String base) {
    throw new AssertionError("nothing is stored here: " + text);
  }
}
