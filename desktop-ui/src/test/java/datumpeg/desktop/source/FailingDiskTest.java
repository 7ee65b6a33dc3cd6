package datumpeg.desktop.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import datumpeg.desktop.app.SampleJob;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A record that is looked at while its disk is really full, or really turns read-only. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "mount namespaces are of Linux")
class FailingDiskTest {
  @TempDir Path folder;
  private @Nullable Process looking;

  @AfterEach
  void close() {
    Process process = looking;
    if (process != null) {
      process.descendants().forEach(ProcessHandle::destroyForcibly);
      process.destroyForcibly();
    }
  }

  private ProcessBuilder shell(List<String> enter, String script, String... arguments) {
    List<String> command = new ArrayList<>(enter);
    command.addAll(List.of("sh", "-ec", "cd " + folder + "; " + script, "sh"));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectErrorStream(true);
  }

  private static String outcome(Process process, boolean[] well) throws Exception {
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    well[0] = process.waitFor() == 0;
    return said.strip();
  }

  private void assumePossible(String mount) throws Exception {
    try {
      boolean[] well = new boolean[1];
      String said = outcome(shell(List.of("unshare", "--mount"), mount).start(), well);
      assumeTrue(well[0], "this user may not mount here: " + said);
    } catch (IOException absent) {
      assumeTrue(false, "this machine cannot mount for one process: " + absent.getMessage());
    }
  }

  /** In a mount namespace of its own, where the folder {@code disk} is a disk with the record. */
  private void look(String mount, String then) throws Exception {
    Files.createDirectory(folder.resolve("disk"));
    assumePossible(mount);
    SampleJob sample = SampleJob.of("larkrise-01", folder.resolve("record.db"));
    sample.run(sample.steps().get(0));
    looking =
        shell(
                List.of("unshare", "--mount"),
                mount + "; cp record.db disk; sync -f disk; " + then + "; exec \"$@\" > said.txt",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                LookAtRecord.class.getName(),
                folder.resolve("disk/record.db").toString())
            .redirectOutput(folder.resolve("trouble.txt").toFile())
            .start();
  }

  private void inside(String script) throws Exception {
    boolean[] well = new boolean[1];
    Process process = Objects.requireNonNull(looking);
    String said =
        outcome(
            shell(List.of("nsenter", "--mount", "--target", "" + process.pid()), script).start(),
            well);
    assertTrue(well[0], said);
  }

  private String said() {
    try {
      return Files.exists(folder.resolve("said.txt"))
          ? Files.readString(folder.resolve("said.txt"))
          : "";
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private void until(String what, BooleanSupplier happened) throws IOException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline,
          "waited too long until "
              + what
              + ": "
              + said()
              + Files.readString(folder.resolve("trouble.txt")));
      LockSupport.parkNanos(10_000_000);
    }
  }

  private static String lastLine(String text) {
    return text.lines().reduce("", (before, line) -> line);
  }

  @Test
  void aRecordOnAFullDiskIsShownAndFollowedOnWhenThereIsRoom() throws Exception {
    look("mount -t tmpfs -o size=2m none disk", "cat /dev/zero > disk/full || true");
    until("it is shown", () -> said().contains("reached, 1 worked out. The disk of the record "));
    assertTrue(said().contains("record.db is full: what is stored can be looked at"), said());
    assertTrue(said().lines().noneMatch(line -> line.startsWith("not reached")), said());
    inside("rm disk/full");
    until("it is followed as usual", () -> lastLine(said()).equals("reached, 1 worked out. "));
    assertTrue(said().lines().noneMatch(line -> line.startsWith("not reached")), said());
  }

  /** As the system does on finding an error; it can then be taken out while it is shown. */
  @Test
  void aDiskThatTurnsReadOnlyIsLetGoOf() throws Exception {
    Files.write(folder.resolve("image"), new byte[16 << 20]);
    look("mkfs.ext4 -q -F image && mount -o loop,errors=remount-ro image disk", "true");
    until("it is followed", () -> lastLine(said()).equals("reached, 1 worked out. "));
    inside(
        "loop=$(findmnt -n -o SOURCE disk); echo 1 > /sys/fs/ext4/${loop#/dev/}/trigger_fs_error");
    until("it is said", () -> said().contains("read-only"));
    inside(
        "for attempt in $(seq 100); do umount disk && exit 0; sleep 0.1; done;"
            + " echo the disk is busy; exit 1");
    until("its absence is said", () -> lastLine(said()).startsWith("not reached, 1 worked out."));
    inside("e2fsck -fy image || [ $? -le 2 ]; mount -o loop image disk");
    until("it is followed again", () -> lastLine(said()).equals("reached, 1 worked out. "));
    assertEquals(0, Files.size(folder.resolve("trouble.txt")));
  }
}
