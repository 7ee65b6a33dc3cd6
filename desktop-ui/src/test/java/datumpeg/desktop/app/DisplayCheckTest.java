package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DisplayCheckTest {
  private static final Map<String, String> SCREEN = Map.of("DISPLAY", ":0");
  private static final Set<String> ALL =
      Set.of("libgtk-3.so.0", "libXtst.so.6", "libpangoft2-1.0.so.0");

  @TempDir Path root;

  @Test
  void windowCanOpenWithLibrariesAndDisplay() {
    assertEquals(
        Optional.empty(), new DisplayCheck("Linux", SCREEN, false, ALL::contains).whatIsMissing());
  }

  @Test
  void missingLibrariesAreNamedByTheirPackages() {
    String sentence =
        new DisplayCheck("Linux", SCREEN, false, name -> false).whatIsMissing().orElseThrow();
    assertTrue(
        sentence.contains("apt-get install libgtk-3-0 libxtst6 libpangoft2-1.0-0"), sentence);
  }

  @Test
  void onlyTheMissingPackageIsNamed() {
    String sentence =
        new DisplayCheck("Linux", SCREEN, false, name -> !name.startsWith("libpango"))
            .whatIsMissing()
            .orElseThrow();
    assertTrue(sentence.endsWith("install libpangoft2-1.0-0."), sentence);
  }

  @Test
  void missingDisplayIsTold() {
    String sentence =
        new DisplayCheck("Linux", Map.of(), false, ALL::contains).whatIsMissing().orElseThrow();
    assertTrue(sentence.contains("$DISPLAY is empty"), sentence);
  }

  @Test
  void headlessToolkitNeedsOnlyItsTextLibrary() {
    assertEquals(
        Optional.empty(),
        new DisplayCheck("Linux", Map.of(), true, "libpangoft2-1.0.so.0"::equals).whatIsMissing());
    assertTrue(
        new DisplayCheck("Linux", Map.of(), true, name -> false).whatIsMissing().isPresent());
  }

  @Test
  void windowsAndMacBringWhatIsNeeded() {
    for (String system : List.of("Windows 11", "Mac OS X")) {
      assertEquals(
          Optional.empty(),
          new DisplayCheck(system, Map.of(), false, name -> false).whatIsMissing());
    }
  }

  @Test
  void librariesAreFoundInTheFoldersOfTheSystemAndOfThePathVariable() throws IOException {
    touch("usr/lib/x86_64-linux-gnu/libc.so.6");
    touch("usr/lib/x86_64-linux-gnu/libgtk-3.so.0");
    Path own = touch("opt/own/libXtst.so.6").getParent();
    List<Path> folders = DisplayCheck.libraryFolders(root, Map.of("LD_LIBRARY_PATH", ":" + own));
    assertTrue(DisplayCheck.isIn(folders, "libgtk-3.so.0"));
    assertTrue(DisplayCheck.isIn(folders, "libXtst.so.6"));
    assertFalse(DisplayCheck.isIn(folders, "libpangoft2-1.0.so.0"));
  }

  @Test
  void nothingIsClaimedMissingInAnUnknownLayout() {
    assertTrue(
        DisplayCheck.isIn(DisplayCheck.libraryFolders(root, Map.of()), "libpangoft2-1.0.so.0"));
  }

  private Path touch(String file) throws IOException {
    Path path = root.resolve(file);
    Files.createDirectories(path.getParent());
    return Files.writeString(path, "");
  }
}
