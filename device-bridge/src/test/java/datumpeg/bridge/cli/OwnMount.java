package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The program in a mount namespace of its own, with its record on a small file system that a test
 * fills up, breaks and repairs. Nothing outside the namespace sees the mount. Linux, and a user who
 * may mount.
 */
final class OwnMount implements AutoCloseable {
  private static final List<String> UNSHARE = List.of("unshare", "--mount");

  private final Path folder;
  private final Path disk;
  private final Process process;

  private OwnMount(Path folder, Path disk, Process process) {
    this.folder = folder;
    this.disk = disk;
    this.process = process;
  }

  /** Skips the test, with the reason, where commands like this cannot be carried out. */
  static void assumePossible(String trial) throws Exception {
    try {
      Process tried = shell(trial).redirectErrorStream(true).start();
      String said = new String(tried.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assumeTrue(tried.waitFor() == 0, "this user may not mount here: " + said.strip());
    } catch (IOException absent) {
      assumeTrue(false, "this machine cannot mount for one process: " + absent.getMessage());
    }
  }

  private static ProcessBuilder shell(String script) {
    List<String> command = new ArrayList<>(UNSHARE);
    command.addAll(List.of("sh", "-c", script));
    return new ProcessBuilder(command);
  }

  /**
   * Mounts, copies the record in the folder there, runs the program, and copies the disk out when
   * it has ended.
   *
   * @param mount the shell's command that mounts something on the folder {@code $DISK}
   * @param then what is done with the disk once the record is on it
   */
  static OwnMount start(
      Path folder,
      String mount,
      String then,
      Class<?> program,
      Map<String, String> environment,
      String... words)
      throws IOException {
    Path disk = Files.createDirectories(folder.resolve("disk"));
    String script =
        mount
            + " && cp record.db $DISK && sync -f $DISK && "
            + then
            + " && \"$@\" --record $DISK/record.db;"
            + " status=$?; mkdir -p after; cp -r $DISK/. after; exit $status";
    List<String> command = new ArrayList<>(UNSHARE);
    command.addAll(List.of("sh", "-c", script, "sh"));
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:-UsePerfData"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add(program.getName());
    command.addAll(List.of(words));
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(folder.resolve("said.txt").toFile());
    builder.environment().put("DISK", disk.toString());
    // Of the user whose console the folder "after" is.
    builder.environment().put("XDG_STATE_HOME", folder.resolve("after/state").toString());
    builder.environment().remove("XDG_RUNTIME_DIR");
    builder.environment().putAll(environment);
    return new OwnMount(folder, disk, builder.start());
  }

  String said() {
    try {
      return WrittenMeanwhile.text(folder.resolve("said.txt"));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** A file of the disk, as it is seen from outside the namespace. */
  Path inside(String name) {
    return Path.of("/proc", "" + process.pid(), "root" + disk.resolve(name));
  }

  /** Writes until nothing more goes on the disk. */
  void fill() throws IOException {
    byte[] block = new byte[4096];
    try (OutputStream filler = Files.newOutputStream(inside("filler"))) {
      while (true) {
        filler.write(block);
      }
    } catch (IOException full) {
      assertEquals("No space left on device", full.getMessage());
    }
  }

  void makeRoom() throws IOException {
    Files.delete(inside("filler"));
  }

  /** Runs a script in the namespace. */
  void run(String script) throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(
                "nsenter",
                "--mount",
                "--target",
                "" + process.pid(),
                "sh",
                "-ec",
                "cd " + folder + "; " + script)
            .redirectErrorStream(true);
    builder.environment().put("DISK", disk.toString());
    Process inside = builder.start();
    String answer = new String(inside.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, inside.waitFor(), answer);
  }

  void type(String lines) throws IOException {
    process.getOutputStream().write(lines.getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().flush();
  }

  /** Asks the program, not the shell around it, to end. */
  void terminate() {
    process.descendants().forEach(ProcessHandle::destroy);
  }

  /** Ends the program as a battery does, not the shell around it. */
  void kill() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
  }

  /** Waits for the end, after which the disk's files are in the folder {@code after}. */
  int ended() throws InterruptedException {
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      throw new AssertionError("it did not end: " + said());
    }
    return process.exitValue();
  }

  @Override
  public void close() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
  }
}
