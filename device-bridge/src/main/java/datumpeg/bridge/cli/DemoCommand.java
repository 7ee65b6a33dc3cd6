package datumpeg.bridge.cli;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URISyntaxException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** {@code demo}. */
@Command(
    name = "demo",
    description = "Take two invented sample jobs end to end into a scratch record.")
final class DemoCommand implements Callable<Integer> {
  private static final String SCRATCH = "datumpeg-demo-";

  private final DatumpegCommand program;
  private final List<Path> places;
  private final Path scratchParent;

  DemoCommand(DatumpegCommand program) {
    this(
        program,
        places(program.console().workingDirectory()),
        Path.of(System.getProperty("java.io.tmpdir")));
  }

  /**
   * A demo for tests.
   *
   * @param places in which, or above which, the sample readings lie
   * @param scratchParent where the folder of the scratch record is made
   */
  DemoCommand(DatumpegCommand program, List<Path> places, Path scratchParent) {
    this.program = program;
    this.places = List.copyOf(places);
    this.scratchParent = scratchParent;
  }

  /** Where the program itself lies, from wherever it was called; then where it was called. */
  static List<Path> places(Path workingDirectory) {
    List<Path> places = new ArrayList<>();
    ownFile().ifPresent(places::add);
    places.add(workingDirectory);
    return places;
  }

  /** The archive or folder this class was loaded from; empty where the platform does not tell. */
  private static Optional<Path> ownFile() {
    CodeSource source = DemoCommand.class.getProtectionDomain().getCodeSource();
    try {
      return source == null || source.getLocation() == null
          ? Optional.empty()
          : Optional.of(Path.of(source.getLocation().toURI()));
    } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException noFile) {
      return Optional.empty();
    }
  }

  @Override
  public Integer call() {
    List<DemoSample> samples = DemoSample.all(places);
    Path record = scratchFolder().resolve("demo.db");
    DemoRun run = new DemoRun(program.console(), record);
    List<DemoRun.Found> found = samples.stream().map(run::of).toList();
    List<String> next = next(samples.get(0).job(), record);
    if (program.json()) {
      Records.print(program, json(found, record, next));
    } else {
      print(found, next);
    }
    return 0;
  }

  /** Numbered, so that its name is short enough for a command line. */
  private Path scratchFolder() {
    for (int number = 1; ; number++) {
      Path folder = scratchParent.resolve(SCRATCH + number);
      try {
        return Files.createDirectory(folder);
      } catch (FileAlreadyExistsException e) {
        // It is of an earlier demo, whose record may still be looked at: the next number.
      } catch (IOException e) {
        throw new OuterWorldException(
            "The folder " + folder + " for the demo's record could not be made: " + e + ".", e);
      }
    }
  }

  private static List<String> next(String job, Path record) {
    String start = File.separatorChar == '\\' ? "datumpeg" : "./datumpeg";
    return List.of(
        start + " report " + job + " --record " + record + " -o job.html",
        start + " desktop --record " + record);
  }

  private void print(List<DemoRun.Found> found, List<String> next) {
    PrintStream out = program.console().out();
    out.println("Two invented jobs, from the bytes their meters sent to what must be done.");
    out.println(DemoPlan.LEGEND);
    for (DemoRun.Found job : found) {
      out.println();
      new DemoStory(job.stored().job(), job.findings()).lines().forEach(out::println);
    }
    out.println();
    out.println("Try next:");
    next.forEach(command -> out.println("  " + command));
  }

  private static JsonObject json(List<DemoRun.Found> found, Path record, List<String> next) {
    return JsonObject.builder()
        .put("format", 1)
        .put("invented", true)
        .put("record", record.toString())
        .put("jobs", JsonArray.of(found.stream().map(DemoCommand::json)))
        .put("next", JsonArray.ofTexts(next))
        .build();
  }

  private static JsonObject json(DemoRun.Found job) {
    return FindingsJson.of(
        job.findings(), job.findings().stages(), List.of(), ProgramVersion.number());
  }
}
