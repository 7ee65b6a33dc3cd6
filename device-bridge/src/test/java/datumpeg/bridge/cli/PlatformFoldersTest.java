package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PlatformFoldersTest {
  private static final Map<String, String> AMBER = Map.of("HOME", "/home/amber");

  @Test
  void linuxFollowsTheXdgSpecification() {
    assertEquals(
        new PlatformFolders(
            Path.of("/home/amber/.local/share/datumpeg"),
            Path.of("/home/amber/.local/state/datumpeg")),
        PlatformFolders.of("Linux", AMBER));
    assertEquals(
        new PlatformFolders(Path.of("/d/datumpeg"), Path.of("/s/datumpeg")),
        PlatformFolders.of("Linux", Map.of("XDG_DATA_HOME", "/d", "XDG_STATE_HOME", "/s")));
  }

  @Test
  void relativeXdgFolderIsIgnored() {
    assertEquals(
        Path.of("/home/amber/.local/share/datumpeg"),
        PlatformFolders.of("Linux", Map.of("HOME", "/home/amber", "XDG_DATA_HOME", "d")).data());
  }

  @Test
  void macKeepsDataInTheLibrary() {
    assertEquals(
        Path.of("/home/amber/Library/Application Support/datumpeg"),
        PlatformFolders.of("Mac OS X", AMBER).data());
  }

  @Test
  void windowsKeepsDataInLocalAppData() {
    assertEquals(
        Path.of("/local/datumpeg"),
        PlatformFolders.of("Windows 11", Map.of("LOCALAPPDATA", "/local")).data());
  }
}
