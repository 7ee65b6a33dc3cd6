package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.desktop.form.JobShelf.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordJobShelfTest {
  @TempDir Path folder;

  private RecordJobShelf shelf() {
    return new RecordJobShelf(folder.resolve("site.db"), "test", Clock.systemUTC());
  }

  @Test
  void jobIsStoredAsTheCommandStoresIt() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    assertEquals(Optional.empty(), shelf().newest("larkrise-01"));
    JobShelf.Taken first = shelf().take(toml, "");
    assertEquals(Outcome.STORED, first.outcome());
    assertEquals(1, first.revision());
    assertEquals(Optional.of(toml), shelf().newest("larkrise-01"));
    assertEquals(Outcome.NOTHING_NEW, shelf().take(toml, "").outcome());
    String other = toml.replace("Amber", "Violet");
    assertEquals(Outcome.OVERTAKEN, shelf().take(other, "").outcome());
    assertEquals(2, shelf().take(other, toml).revision());
    assertEquals(Optional.of(other), shelf().newest("larkrise-01"));
    assertEquals(Optional.empty(), shelf().newest("larkrise-02"));
  }

  @Test
  void fileIsReadWhateverItSays() throws IOException {
    Path file = folder.resolve("job.toml");
    Files.writeString(file, "[job");
    assertEquals("[job", shelf().read(file));
    assertThrows(InputException.class, () -> shelf().read(folder.resolve("none.toml")));
    assertThrows(InputException.class, () -> shelf().take("[job", ""));
  }

  /** The digest is that of the bytes, as of a file that was loaded. */
  @Test
  void digestIsThatOfTheFile() throws IOException {
    String toml = BuildingShapeTest.sample("larkrise-01");
    Path file = folder.resolve("job.toml");
    Files.writeString(file, toml);
    assertEquals(JobFile.load(file, "job.toml").sha256(), JobFile.of(toml, "job.toml").sha256());
  }
}
