package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.List;
import org.junit.jupiter.api.Test;

final class LineNetworkTest {
  private static final List<String> STATIONS = List.of("0", "1", "2", "3");

  private static LineDifference between(
      String from, String to, double metres, CommonPart... parts) {
    return new LineDifference(
        from, to, new Observation(from + ">" + to, metres, 0.001, List.of(parts)));
  }

  /**
   * One run from one end: each reading has u, so each bay has u sqrt 2 and neighbours correlate by
   * -0.5 (the covariance of c1 - c0 and c2 - c1 is -u^2).
   */
  @Test
  void neighbouringBaysOfARunCorrelateByMinusOneHalf() {
    AdjustedLine line =
        new LineNetwork(
                List.of("hook", "0", "1", "2", "3"),
                List.of(
                    between("hook", "0", 0.1),
                    between("hook", "1", 6.1),
                    between("hook", "2", 12.1),
                    between("hook", "3", 18.1)))
            .adjust();
    Estimate bay = line.difference("1", "2");
    assertEquals(6, bay.value(), 1e-12);
    assertEquals(0.001 * Math.sqrt(2), bay.standardUncertainty(), 1e-15);
    assertEquals(
        -0.5,
        line.linearisedDifference("0", "1").correlationWith(line.linearisedDifference("1", "2")),
        1e-12);
    assertEquals(
        0,
        line.linearisedDifference("0", "1").correlationWith(line.linearisedDifference("2", "3")),
        1e-12);
    assertEquals(0.001 * Math.sqrt(2), line.difference("0", "3").standardUncertainty(), 1e-15);
  }

  @Test
  void chainedBaysAccumulateByTheRootOfTheirNumber() {
    AdjustedLine line =
        new LineNetwork(
                STATIONS, List.of(between("0", "1", 6), between("1", "2", 6), between("2", "3", 6)))
            .adjust();
    assertEquals(
        new Estimate(18, 0.001 * Math.sqrt(3)).value(), line.difference("0", "3").value(), 1e-12);
    assertEquals(0.001 * Math.sqrt(3), line.difference("0", "3").standardUncertainty(), 1e-15);
    assertTrue(line.fit().test().isEmpty());
  }

  /** Three bays and the whole, equally good: the misclosure of 4 mm is shared in four parts. */
  @Test
  void aClosedChainSharesItsMisclosure() {
    AdjustedLine line =
        new LineNetwork(
                STATIONS,
                List.of(
                    between("0", "1", 6),
                    between("1", "2", 6),
                    between("2", "3", 6),
                    between("0", "3", 18.004)))
            .adjust();
    assertEquals(6.001, line.difference("1", "2").value(), 1e-12);
    assertEquals(18.003, line.difference("0", "3").value(), 1e-12);
    assertEquals(0.001 * Math.sqrt(0.75), line.difference("0", "3").standardUncertainty(), 1e-15);
    GlobalTest test = line.fit().test().orElseThrow();
    assertEquals(4, test.squareSum(), 1e-9);
    assertEquals(0.25, line.fit().observation("0>3").redundancy(), 1e-12);
  }

  /**
   * A common zero error of 2 mm per reading stays in a chain three times, in a run's bays not at
   * all.
   */
  @Test
  void aCommonErrorCountsOncePerReadingInAChainAndCancelsInARun() {
    CommonPart zero = new CommonPart("laser|1 zero", 0.002);
    AdjustedLine chain =
        new LineNetwork(
                STATIONS,
                List.of(
                    between("0", "1", 6, zero),
                    between("1", "2", 6, zero),
                    between("2", "3", 6, zero)))
            .adjust();
    assertEquals(
        Math.sqrt(3 * 1e-6 + 36e-6), chain.difference("0", "3").standardUncertainty(), 1e-12);
    AdjustedLine run =
        new LineNetwork(
                STATIONS,
                List.of(
                    between("0", "1", 6, zero),
                    between("0", "2", 12, zero),
                    between("0", "3", 18, zero)))
            .adjust();
    assertEquals(Math.sqrt(2e-6), run.difference("1", "3").standardUncertainty(), 1e-12);
  }

  @Test
  void aMissingBaySplitsTheLine() {
    AdjustedLine line =
        new LineNetwork(STATIONS, List.of(between("0", "1", 6), between("3", "2", -6))).adjust();
    assertEquals(List.of(List.of("0", "1"), List.of("2", "3")), line.parts());
    assertEquals(6, line.difference("2", "3").value());
    assertFalse(line.connected("1", "2"));
    assertThrows(IllegalArgumentException.class, () -> line.difference("1", "2"));
    assertThrows(IllegalArgumentException.class, () -> line.difference("1", "9"));
  }

  @Test
  void aLineWithoutReadingsHasNoDifferences() {
    AdjustedLine line = new LineNetwork(STATIONS, List.of()).adjust();
    assertEquals(4, line.parts().size());
    assertEquals(Estimate.exact(0), line.difference("2", "2"));
    assertEquals(List.of(), new LineNetwork(List.of(), List.of()).adjust().parts());
  }

  @Test
  void refusesWhatIsNoLine() {
    assertThrows(IllegalArgumentException.class, () -> between("1", "1", 0));
    assertThrows(IllegalArgumentException.class, () -> between("0", "1", Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> new LineNetwork(STATIONS, List.of(between("0", "9", 1))));
    assertThrows(
        IllegalArgumentException.class, () -> new LineNetwork(List.of("0", "0"), List.of()));
  }
}
