package datumpeg.desktop.signoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.desktop.app.SampleJob;
import datumpeg.desktop.source.JobRow;
import datumpeg.desktop.source.JobSource;
import datumpeg.desktop.source.SiteRecordOpening;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordDeskTest {
  @TempDir Path folder;

  @Test
  void aPhotoIsCopiedBesideTheRecordAndNamedInIt() throws IOException {
    Path file = folder.resolve("site.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.run(sample.steps().get(0));
    Path photo = Files.write(folder.resolve("edge.jpg"), new byte[] {1, 2, 3});
    RecordDesk desk = new RecordDesk(file, "test", Clock.systemUTC());
    desk.attach("larkrise-01", "arrival", "", photo);
    Files.delete(photo);
    // SHA-256 of the bytes 1, 2, 3, by sha256sum of GNU coreutils.
    assertTrue(Files.exists(folder.resolve("photos").resolve("039058c6f2c0cb49-edge.jpg")));
    try (JobSource source = new SiteRecordOpening(file).open()) {
      JobRow row = source.jobs().get(0);
      assertEquals(Map.of("arrival", List.of("edge.jpg")), source.reduce(row).photos());
    }
    assertThrows(InputException.class, () -> desk.attach("larkrise-01", "arrival", "", photo));
  }
}
