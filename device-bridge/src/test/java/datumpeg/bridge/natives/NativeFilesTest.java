package datumpeg.bridge.natives;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.OuterWorldException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NativeFilesTest {
  private static final byte[] CONTENT = {1, 2, 3};

  @TempDir Path folder;
  private final List<Path> used = new ArrayList<>();

  private static void put(NativeFiles files, NativeFiles.Use use) {
    files.put(Map.of("kind/lib.so", CONTENT), use);
  }

  /** A file stands where the folder would have to be: so also root may not write there. */
  private Path barred(String name) throws IOException {
    return Files.writeString(folder.resolve(name), "");
  }

  @Test
  void theUsersOwnFolderIsUsedAndNothingElseIsLeftThere() throws IOException {
    NativeFiles files = new NativeFiles("Invented", folder, barred("tmp"));
    put(files, used::add);
    put(files, used::add);
    Path own = folder.resolve("datumpeg").resolve("invented");
    assertEquals(List.of(own, own), used);
    assertArrayEquals(CONTENT, Files.readAllBytes(own.resolve("kind/lib.so")));
    try (Stream<Path> all = Files.list(own.resolve("kind"))) {
      assertEquals(1, all.count());
    }
  }

  @Test
  void aFileThatWasAlteredIsReplaced() throws IOException {
    NativeFiles files = new NativeFiles("Invented", folder, folder);
    put(files, used::add);
    Path file = used.get(0).resolve("kind/lib.so");
    Files.write(file, new byte[] {9});
    put(files, used::add);
    assertArrayEquals(CONTENT, Files.readAllBytes(file));
  }

  @Test
  void whereTheUsersFolderTakesNothingAFreshTemporaryOneDoes() throws IOException {
    put(new NativeFiles("Invented", barred("cache"), folder), used::add);
    assertEquals(folder, used.get(0).getParent());
    assertArrayEquals(CONTENT, Files.readAllBytes(used.get(0).resolve("kind/lib.so")));
  }

  @Test
  void whatDoesNotLoadFromTheFirstIsTriedInTheSecond() {
    put(
        new NativeFiles("Invented", folder.resolve("cache"), folder),
        where -> {
          used.add(where);
          if (used.size() == 1) {
            throw new UnsatisfiedLinkError("failed to map segment");
          }
        });
    assertEquals(2, used.size());
    assertEquals(folder, used.get(1).getParent());
  }

  @Test
  void whereNoFolderDoesBothAreNamedWithTheReasonAndWhatHelps() throws IOException {
    NativeFiles files = new NativeFiles("Invented", barred("cache"), folder.resolve("absent"));
    OuterWorldException refused =
        assertThrows(OuterWorldException.class, () -> put(files, used::add));
    assertEquals(
        "The native library of Invented could be unpacked and loaded neither in "
            + folder.resolve("cache/datumpeg/invented")
            + " (Not a directory) nor in the temporary folder "
            + folder.resolve("absent")
            + " (there is no such folder). Make room in one of these folders, or set XDG_CACHE_HOME"
            + " to a folder that this user may write and that programs may run from (not mounted"
            + " noexec).",
        refused.getMessage());
    assertEquals(3, refused.exitStatus());
    NativeFiles.Obstacle obstacle = files.probed().orElseThrow();
    assertTrue(obstacle.found().startsWith("They could be unpacked neither in "), obstacle.found());
    assertTrue(obstacle.found().endsWith("."), obstacle.found());
  }

  @Test
  void theProbeLeavesNothing() throws IOException {
    assertTrue(new NativeFiles("Invented", folder, folder).probed().isEmpty());
    try (Stream<Path> left = Files.list(folder.resolve("datumpeg/invented"))) {
      assertEquals(0, left.count());
    }
  }
}
