package datumpeg.desktop.app;

import datumpeg.desktop.findings.StoredRows;
import java.util.List;
import java.util.function.Consumer;

/** For windows on a record that is no file: there are no rows, and that is said. */
public final class NoRows implements StoredRows {
  @Override
  public void readings(String job, List<String> ids, Consumer<Behind> found) {
    found.accept(new Behind(List.of(), "There is no record file."));
  }

  @Override
  public void moved(String job, String thing, String why, Consumer<String> told) {
    told.accept("There is no record file.");
  }
}
