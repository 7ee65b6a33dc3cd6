package datumpeg.bridge.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The short form of the fuzzing: every corpus, and each of its files with bytes changed. */
class FuzzTargetsTest {
  private static final Path CORPORA =
      Path.of(System.getProperty("datumpeg.root", ".."))
          .resolve("device-bridge/src/test/resources/datumpeg/bridge/fuzz");
  private static final int CHANGES = 300;

  @ParameterizedTest
  @EnumSource(FuzzTarget.class)
  void theCorpusAndWhatIsNearItAreTaken(FuzzTarget target) throws IOException {
    List<Path> corpus;
    try (Stream<Path> files = Files.list(CORPORA.resolve(target.folder()))) {
      corpus = files.sorted().toList();
    }
    assertFalse(corpus.isEmpty(), target.folder());
    SplittableRandom random = new SplittableRandom(20260302L);
    target.accept(new byte[0]);
    for (Path file : corpus) {
      byte[] seed = Files.readAllBytes(file);
      assertTimeoutPreemptively(
          Duration.ofSeconds(60),
          () -> {
            target.accept(seed);
            for (int i = 0; i < CHANGES; i++) {
              target.accept(changed(seed, random));
            }
          },
          file.toString());
    }
  }

  private static byte[] changed(byte[] seed, SplittableRandom random) {
    byte[] changed = seed.clone();
    for (int i = 0; i <= random.nextInt(4) && changed.length > 0; i++) {
      changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
    }
    return changed;
  }
}
