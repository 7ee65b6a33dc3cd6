package datumpeg.desktop.form;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A form at hand without a window, on job files in memory. */
final class FormAtHand {
  final Words words = Words.of(Locale.ROOT);
  final Shelf shelf = new Shelf();
  final Map<String, String> kept = new HashMap<>();
  final List<String> opened = new ArrayList<>();
  final FormViewModel model = another();

  /** Job files in memory. */
  static final class Shelf implements JobShelf {
    final Map<String, String> newest = new HashMap<>();
    final List<String> taken = new ArrayList<>();
    List<String> strays = List.of();
    String file = "";

    @Override
    public Optional<String> newest(String job) {
      return Optional.ofNullable(newest.get(job));
    }

    @Override
    public String read(Path path) {
      if (file.isEmpty()) {
        throw new InputException("There is no job file " + path + ".");
      }
      return file;
    }

    @Override
    public Taken take(String text, String base) {
      String job = JobFile.read(text, "job file").identity().id();
      if (!newest.getOrDefault(job, "").equals(base)) {
        return new Taken(job, 0, Outcome.OVERTAKEN, List.of());
      }
      taken.add(text);
      newest.put(job, text);
      return new Taken(job, taken.size(), Outcome.STORED, strays);
    }
  }

  /** A form on the same shelf, as a window that is opened again has it. */
  FormViewModel another() {
    FormViewModel made =
        new FormViewModel(
            words,
            shelf,
            (name, work, done, failed) -> {
              try {
                work.run();
              } catch (FailureException e) {
                failed.accept(e);
                return;
              }
              done.run();
            },
            kept::putAll,
            opened::add,
            Runnable::run,
            Runnable::run);
    made.show(InventedJobs.state(InventedJobs.reduced()));
    return made;
  }

  void type(String path, String text) {
    model.edits().type(row(path).field(), text);
  }

  Row row(String path) {
    return model.page().get().groups().stream()
        .flatMap(group -> group.rows().stream())
        .filter(row -> row.field().path().equals(path))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no field " + path));
  }

  String answer() {
    return model.page().get().answer();
  }

  void fillIn() {
    type("job.name", "Cart shed, Ashby");
    type("job.id", "ashby-12");
    type("job.site", "Ashby");
    type("job.crew", "Blue");
    type("building.span", "6 m");
    type("building.length", "9000");
    type("building.bays", "4500; 4.5 m");
    type("building.eave_height", "2.7 m");
    type("building.pitch", "15");
    type("sections.column_depth", "120");
    type("sections.column_width", "60");
    type("sections.side_girt_depth", "60");
    type("sections.end_girt_depth", "60");
    type("sections.rafter_depth", "120");
  }

  boolean maySave() {
    return model.page().get().maySave();
  }

  /** What is wrong, everywhere, for a test that fails. */
  String mistakes() {
    List<String> wrong = new ArrayList<>(List.of(answer()));
    for (FormPage.Group group : model.page().get().groups()) {
      wrong.add(group.wrong());
      group.rows().forEach(row -> wrong.add(row.wrong().isEmpty() ? "" : row.toString()));
    }
    wrong.add(model.page().get().strange().toString());
    wrong.removeIf(String::isEmpty);
    return String.join("\n", wrong);
  }
}
