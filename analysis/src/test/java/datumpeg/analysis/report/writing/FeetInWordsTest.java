package datumpeg.analysis.report.writing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeetInWordsTest {
  /** An inch is 25.4 mm exactly: 21.3 mm are 13.4 sixteenths, 12716 mm are 500 10/16 in. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "Push it by 21.3 ± 1.6 mm. | Push it by 13/16\" (21.3 ± 1.6 mm).",
        "both diagonals read 12716 mm | both diagonals read 41' 8 5/8\" (12716 mm)",
        "from 3.0 mm to 2.4 mm | from 1/8\" (3.0 mm) to 1/8\" (2.4 mm)",
        "apex -25.4 mm; each mm wider moves the apex -2.84 mm | apex -1\" (25.4 mm); each mm wider moves the apex -2.84 mm",
        "Pack under the bases: A2: 3 + 1 mm. | Pack under the bases: A2: 3 + 1 mm.",
        "rises 1.20 ± 0.10 mm/m toward end n | rises 1.20 ± 0.10 mm/m toward end n",
        "by 0.4 mm | by 0\" (0.4 mm)",
        "no length here | no length here",
      })
  void lengthsAreToldInFeetAndInches(String metric, String imperial) {
    assertEquals(imperial, FeetInWords.words(metric));
  }
}
