package datumpeg.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs the launcher in a house of its own, with a Java and a Maven that only tell of their call.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the launcher under test is for a POSIX shell")
class LauncherTest {
  @TempDir Path folder;
  private Path home;
  private Path tools;
  private final Map<String, String> environment = new HashMap<>();

  @BeforeEach
  void furnish() throws IOException {
    home = Files.createDirectories(folder.resolve("the house"));
    tools = Files.createDirectories(folder.resolve("tools"));
    for (String tool :
        List.of("find", "head", "readlink", "cat", "cksum", "sed", "mkdir", "rm", "mv", "sh")) {
      Files.createSymbolicLink(tools.resolve(tool), installed(tool));
    }
    Files.copy(House.ROOT.resolve("datumpeg"), home.resolve("datumpeg"));
    Files.writeString(home.resolve("pom.xml"), "<project/>");
    Files.createDirectories(home.resolve("analysis/src/main"));
    javaOfVersion("17.0.15");
    script(
        tools.resolve("mvn"),
        "mkdir -p desktop-ui/target/lib",
        ": > desktop-ui/target/lib/analysis-1.jar",
        ": > desktop-ui/target/datumpeg.jar",
        "printf 'mvn %s\\n' \"$*\"");
    environment.put("PATH", tools.toString());
  }

  @Test
  void buildsWhenNothingIsBuiltAndSaysSo() {
    Ended ended = run(home, "./datumpeg", "job", "list");
    assertEquals(0, ended.status(), ended.err());
    assertTrue(ended.err().startsWith("Building Datumpeg, because nothing is built yet."));
    assertTrue(ended.err().contains("mvn -B -q -Dquick package"), ended.err());
    assertTrue(ended.out().endsWith("\njob\nlist\n"), ended.out());
  }

  @Test
  void startsWithoutMavenOnceBuilt() throws IOException {
    built();
    assertEquals("", run(home, "./datumpeg", "job").err());
  }

  @Test
  void buildsAgainOnceWhenASourceIsNewer() throws IOException {
    built();
    Path source = Files.writeString(home.resolve("analysis/src/main/A.java"), "class A {}");
    Files.setLastModifiedTime(source, FileTime.from(Instant.now().plusMillis(50)));
    String err = run(home, "./datumpeg", "job").err();
    assertTrue(err.contains("because analysis/src/main"), err);
    Files.setLastModifiedTime(
        home.resolve("desktop-ui/target/start/built"), FileTime.from(Instant.now().plusSeconds(1)));
    assertEquals("", run(home, "./datumpeg", "job").err());
  }

  @Test
  void passesArgumentsWithSpacesFromAnyFolderThroughALink() throws IOException {
    built();
    Path elsewhere = Files.createDirectories(folder.resolve("else where"));
    Files.createSymbolicLink(elsewhere.resolve("first"), Path.of("../the house/datumpeg"));
    Files.createSymbolicLink(elsewhere.resolve("second"), elsewhere.resolve("first"));
    Ended ended = run(elsewhere, "./second", "job", "add", "hay shed.toml", "", "*");
    assertEquals("", ended.err());
    assertTrue(ended.out().endsWith("\njob\nadd\nhay shed.toml\n\n*\n"), ended.out());
    assertTrue(ended.out().contains("\n" + real(home) + "/desktop-ui/target/datumpeg.jar\n"));
  }

  @Test
  void exitStatusIsThatOfTheProgram() throws IOException {
    built();
    environment.put("STATUS", "4");
    assertEquals(4, run(home, "./datumpeg", "verify").status());
  }

  @Test
  void missingJavaIsToldWithItsPackage() throws IOException {
    Files.delete(tools.resolve("java"));
    Ended ended = run(home, "./datumpeg", "job");
    assertEquals(3, ended.status());
    assertTrue(ended.err().contains("openjdk-17-jdk"), ended.err());
  }

  @Test
  void javaHomeThatHoldsNoJavaIsTold() {
    environment.put("JAVA_HOME", "/nowhere");
    Ended ended = run(home, "./datumpeg", "job");
    assertEquals(3, ended.status());
    assertTrue(ended.err().startsWith("JAVA_HOME names '/nowhere'"), ended.err());
  }

  @Test
  void javaHomeIsPreferred() throws IOException {
    built();
    Path other = javaIn(folder.resolve("other jdk"), "21.0.2");
    environment.put("JAVA_HOME", other.toString());
    Ended ended = run(home, "./datumpeg", "job");
    assertTrue(ended.out().startsWith(other.resolve("bin/java") + "\n"), ended.out());
  }

  @Test
  void oldJavaIsToldWithTheVersionFound() throws IOException {
    for (String version : List.of("11.0.21", "1.8.0_392")) {
      javaOfVersion(version);
      Ended ended = run(home, "./datumpeg", "job");
      assertEquals(3, ended.status());
      assertTrue(ended.err().startsWith("Java " + version + " was found"), ended.err());
      assertTrue(ended.err().contains("openjdk-17-jdk"), ended.err());
    }
  }

  @Test
  void missingMavenAndMissingCompilerAreToldWhenABuildIsNeeded() throws IOException {
    Files.delete(folder.resolve("jdk/bin/javac"));
    Ended ended = run(home, "./datumpeg", "job");
    assertEquals(3, ended.status());
    assertTrue(ended.err().contains("has no compiler"), ended.err());
    Files.delete(tools.resolve("mvn"));
    ended = run(home, "./datumpeg", "job");
    assertEquals(3, ended.status());
    assertTrue(ended.err().contains("apt-get install maven"), ended.err());
  }

  @Test
  void brokenBuildIsTold() throws IOException {
    script(tools.resolve("mvn"), "echo '[ERROR] no'", "exit 1");
    Ended ended = run(home, "./datumpeg", "job");
    assertEquals(3, ended.status());
    assertEquals("", ended.out());
    assertTrue(ended.err().contains("[ERROR] no\nThe build failed;"), ended.err());
  }

  @Test
  void localeThatCannotCarryADegreeSignIsReplaced() throws IOException {
    built();
    assertTrue(run(home, "./datumpeg", "job").out().contains("LC_ALL=C.UTF-8\n"));
    environment.put("LANG", "POSIX");
    assertTrue(run(home, "./datumpeg", "job").out().contains("LC_ALL=C.UTF-8\n"));
    environment.put("LANG", "de_AT.UTF-8");
    assertTrue(run(home, "./datumpeg", "job").out().contains("LC_ALL=\n"));
  }

  @Test
  void everythingUsesTheQuickCompilerAndEachItsOwnMemory() throws IOException {
    built();
    for (String command : List.of("job", "desktop", "collect")) {
      String out = run(home, "./datumpeg", "--record", "a.db", command).out();
      assertTrue(out.contains("-XX:TieredStopAtLevel=1\n"), out);
      assertEquals(command.equals("collect"), out.contains("-Xmx48m"), out);
      assertEquals(!command.equals("desktop"), out.contains("-XX:+UseSerialGC\n"), out);
      assertEquals(command.equals("desktop"), out.contains("-XX:MaxGCPauseMillis=15\n"), out);
    }
  }

  @Test
  void newJavaIsToldThatNativeLibrariesAreWanted() throws IOException {
    built();
    assertFalse(run(home, "./datumpeg", "job").out().contains("--enable-native-access"));
    javaOfVersion("25.0.3");
    assertTrue(run(home, "./datumpeg", "job").out().contains("--enable-native-access"));
  }

  @Test
  void unpackedDatabaseLibraryIsHandedOver() throws IOException {
    built();
    Path library = home.resolve("desktop-ui/target/native/org/sqlite/native/Linux/x86_64/libx.so");
    Files.createDirectories(library.getParent());
    Files.writeString(library, "");
    String out = run(home, "./datumpeg", "job").out();
    assertTrue(out.contains("-Dorg.sqlite.lib.path=" + real(home)), out);
    assertTrue(out.contains("-Dorg.sqlite.lib.name=libx.so\n"), out);
  }

  @Test
  void archiveOfClassesIsMadeOnceForEachBuildAndJava() throws IOException {
    built();
    script(
        folder.resolve("jdk/bin/java"),
        "for word; do",
        "  case $word in -XX:SharedArchiveFile=*) echo made > \"${word#*=}\" ;; esac",
        "  printf '%s\\n' \"$word\"",
        "done");
    String out = run(home, "./datumpeg", "job").out();
    assertTrue(out.contains("-XX:SharedArchiveFile="), out);
    assertFalse(out.contains("-Xshare:dump"), out);
    Files.writeString(home.resolve("desktop-ui/target/lib/analysis-1.jar"), "another build");
    Files.setLastModifiedTime(
        home.resolve("desktop-ui/target/lib/analysis-1.jar"),
        FileTime.from(Instant.now().plusMillis(50)));
    String again = run(home, "./datumpeg", "job").out();
    assertTrue(again.contains("-XX:SharedArchiveFile="), again);
    assertFalse(again.equals(out), again);
    try (Stream<Path> files = Files.list(home.resolve("desktop-ui/target/start"))) {
      assertEquals(1, files.filter(file -> file.toString().endsWith(".jsa")).count());
    }
  }

  @Test
  void windowGetsAnArchiveOfTheClassesItWasSeenToLoad() throws Exception {
    built();
    javaThatLists("javafx/stage/Stage"); // newer Java adds a number
    String first = run(home, "./datumpeg", "desktop").out();
    assertTrue(first.contains("window-17.0.15-"), first);
    assertTrue(first.contains("-XX:DumpLoadedClassList="), first);
    Path made = awaitArchive("window-");
    String second = run(home, "./datumpeg", "desktop").out();
    assertTrue(second.contains("-XX:SharedArchiveFile=" + real(made)), second);
    assertFalse(second.contains("-XX:DumpLoadedClassList="), second);
    String command = run(home, "./datumpeg", "job").out();
    assertFalse(command.contains("window-"), command);
  }

  @Test
  void runThatShowedNoWindowTeachesNothing() throws IOException {
    built();
    javaThatLists("javafx/stage/StageStyle");
    run(home, "./datumpeg", "desktop", "--help");
    try (Stream<Path> files = Files.list(home.resolve("desktop-ui/target/start"))) {
      assertTrue(files.noneMatch(file -> file.getFileName().toString().startsWith("window-")));
    }
    assertTrue(run(home, "./datumpeg", "desktop").out().contains("-XX:DumpLoadedClassList="));
  }

  @Test
  void statusOfTheFirstWindowIsPassedOn() throws IOException {
    built();
    environment.put("STATUS", "3");
    assertEquals(3, run(home, "./datumpeg", "desktop").status());
  }

  private void javaThatLists(String line) throws IOException {
    script(
        folder.resolve("jdk/bin/java"),
        "for word; do",
        "  case $word in",
        "    -XX:SharedArchiveFile=*.[0-9]*) echo made > \"${word#*=}\" ;;",
        "    -XX:DumpLoadedClassList=*) echo '" + line + "' > \"${word#*=}\" ;;",
        "  esac",
        "  printf '%s\\n' \"$word\"",
        "done");
  }

  /** It is made after the window was closed, when the command has ended. */
  private Path awaitArchive(String name) throws IOException, InterruptedException {
    Instant latest = Instant.now().plusSeconds(60);
    while (Instant.now().isBefore(latest)) {
      try (Stream<Path> files = Files.list(home.resolve("desktop-ui/target/start"))) {
        Optional<Path> made =
            files
                .filter(file -> file.getFileName().toString().matches(name + ".*\\.jsa"))
                .findFirst();
        if (made.isPresent()) {
          return made.get();
        }
      }
      Thread.sleep(20);
    }
    throw new AssertionError("no archive " + name);
  }

  /** A build that is newer than all sources. */
  private void built() throws IOException {
    Path lib = Files.createDirectories(home.resolve("desktop-ui/target/lib"));
    Path start = Files.createDirectories(home.resolve("desktop-ui/target/start"));
    for (Path file :
        List.of(
            lib.resolve("analysis-1.jar"),
            home.resolve("desktop-ui/target/datumpeg.jar"),
            start.resolve("built"))) {
      Files.writeString(file, "");
    }
  }

  private void javaOfVersion(String version) throws IOException {
    Path jdk = javaIn(folder.resolve("jdk"), version);
    Files.deleteIfExists(tools.resolve("java"));
    Files.createSymbolicLink(tools.resolve("java"), jdk.resolve("bin/java"));
  }

  private static Path javaIn(Path jdk, String version) throws IOException {
    Files.createDirectories(jdk.resolve("bin"));
    Files.writeString(jdk.resolve("release"), "OS=\"x\"\nJAVA_VERSION=\"" + version + "\"\n");
    script(
        jdk.resolve("bin/java"),
        "printf '%s\\n' \"$0\" \"LC_ALL=${LC_ALL:-}\" \"$@\"",
        "exit ${STATUS:-0}");
    script(jdk.resolve("bin/javac"), "exit 0");
    return jdk;
  }

  private static void script(Path file, String... lines) throws IOException {
    Files.writeString(file, "#!/bin/sh\n" + String.join("\n", lines) + "\n");
    assertTrue(file.toFile().setExecutable(true));
  }

  private static Path installed(String tool) {
    return Stream.of("/usr/bin", "/bin")
        .map(folder -> Path.of(folder, tool))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException(tool + " is in neither /usr/bin nor /bin."));
  }

  private static Path real(Path path) throws IOException {
    return path.toRealPath();
  }

  private Ended run(Path workingDirectory, String... command) {
    try {
      Path out = Files.createTempFile(folder, "out", "");
      Path err = Files.createTempFile(folder, "err", "");
      ProcessBuilder builder =
          new ProcessBuilder(command)
              .directory(workingDirectory.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile());
      builder.environment().clear();
      builder.environment().putAll(environment);
      Process process = builder.start();
      process.getOutputStream().close();
      assertTrue(process.waitFor(60, TimeUnit.SECONDS), "The launcher did not end in 60 s.");
      return new Ended(
          process.exitValue(),
          Files.readString(out, StandardCharsets.UTF_8),
          Files.readString(err, StandardCharsets.UTF_8));
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private record Ended(int status, String out, String err) {}
}
