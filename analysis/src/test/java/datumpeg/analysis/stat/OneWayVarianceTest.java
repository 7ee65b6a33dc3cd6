package datumpeg.analysis.stat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.stat.inference.OneWayAnova;
import org.junit.jupiter.api.Test;

class OneWayVarianceTest {
  /** NIST/SEMATECH e-Handbook, 7.4.3.6: four groups of five. */
  static final List<List<Double>> FOUR_GROUPS =
      groups(
          "6.9 5.4 5.8 4.6 4.0",
          "8.3 6.8 7.8 9.2 6.5",
          "8.0 10.5 8.1 6.9 9.3",
          "5.8 3.8 6.1 5.6 6.2");

  /** NIST Statistical Reference Datasets, SiRstv: resistivity by five instruments, ohm cm. */
  static final List<List<Double>> FIVE_INSTRUMENTS =
      groups(
          "196.3052 196.1240 196.1890 196.2569 196.3403",
          "196.3042 196.3825 196.1669 196.3257 196.0422",
          "196.1303 196.2005 196.2889 196.0343 196.1811",
          "196.2795 196.1748 196.1494 196.1485 195.9885",
          "196.2119 196.1051 196.1850 196.0052 196.2090");

  static List<List<Double>> groups(String... lines) {
    return Stream.of(lines)
        .map(line -> Stream.of(line.split(" ")).map(Double::valueOf).toList())
        .toList();
  }

  /** Printed there: 38.820, 21.292, 12.940, 1.331, 9.724; the probability by scipy 1.17. */
  @Test
  void handbooksFourGroups() {
    OneWayVariance table = OneWayVariance.of(FOUR_GROUPS);
    assertEquals(38.820, table.betweenSquares(), 5e-4);
    assertEquals(21.292, table.withinSquares(), 5e-4);
    assertEquals(3, table.betweenDegrees());
    assertEquals(16, table.withinDegrees());
    assertEquals(9.72384, table.ratio(), 5e-6);
    assertEquals(6.84454e-4, table.probability(), 5e-10);
  }

  /** Certified values of the data set, 15 digits. */
  @Test
  void certifiedInstruments() {
    OneWayVariance table = OneWayVariance.of(FIVE_INSTRUMENTS);
    assertEquals(5.11462616000000e-2, table.betweenSquares(), 1e-12);
    assertEquals(2.16636560000000e-1, table.withinSquares(), 1e-12);
    assertEquals(1.18046237440255, table.ratio(), 1e-10);
  }

  /** Another route: Hipparchus. */
  @Test
  void agreesWithAReferenceLibrary() {
    for (List<List<Double>> groups : List.of(FOUR_GROUPS, FIVE_INSTRUMENTS)) {
      List<double[]> arrays = new ArrayList<>();
      groups.forEach(group -> arrays.add(group.stream().mapToDouble(v -> v).toArray()));
      OneWayVariance table = OneWayVariance.of(groups);
      assertEquals(new OneWayAnova().anovaFValue(arrays), table.ratio(), 1e-9);
      assertEquals(new OneWayAnova().anovaPValue(arrays), table.probability(), 1e-9);
    }
  }

  @Test
  void groupsWithoutVariationAreDecidedAtOnce() {
    OneWayVariance apart = OneWayVariance.of(groups("1 1", "2 2"));
    assertEquals(Double.POSITIVE_INFINITY, apart.ratio());
    assertEquals(0, apart.probability());
    OneWayVariance alike = OneWayVariance.of(groups("1 1", "1 1"));
    assertEquals(0, alike.ratio());
    assertEquals(1, alike.probability());
  }

  @Test
  void tooLittleToCompareIsRefused() {
    List<List<List<Double>>> cases =
        List.of(
            List.of(),
            groups("1 2"),
            groups("1", "2"),
            Arrays.asList(List.of(1.0, 2.0), List.of()),
            List.of(List.of(1.0, Double.NaN), List.of(1.0, 2.0)));
    for (List<List<Double>> wrong : cases) {
      assertThrows(IllegalArgumentException.class, () -> OneWayVariance.of(wrong));
    }
  }
}
