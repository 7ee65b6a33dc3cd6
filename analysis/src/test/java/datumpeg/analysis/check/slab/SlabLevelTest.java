package datumpeg.analysis.check.slab;

import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.STAFF;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class SlabLevelTest {
  private static final List<String> CORNERS = List.of("A1", "A4", "B4", "B1");

  private static InventedJob levels(double... metres) {
    InventedJob job =
        new InventedJob().meter("level", HEIGHT, 0.0005, 0.002).limit("slab-level", 0.010);
    for (int i = 0; i < metres.length; i++) {
      job.read("arrival", HEIGHT, "slab." + CORNERS.get(i), metres[i]);
    }
    return job;
  }

  @Test
  void theSpreadNamesHighAndLowAndTheBestPlane() {
    Outcome spread =
        levels(0.100, 0.103, 0.106, 0.104)
            .reduced("arrival")
            .outcome("slab-level", "slab")
            .orElseThrow();
    assertEquals(0.006, spread.measured(), 1e-12);
    assertTrue(
        spread.aside().startsWith("highest at slab corner B4, lowest at slab corner A1"),
        spread.aside());
    assertTrue(
        spread
            .aside()
            .contains(
                "best plane rises 0.14 ± 0.06 mm/m toward end n, rises 0.39 ± 0.11 mm/m toward side B"),
        spread.aside());
    // q(0.95; 4, inf) = 3.633, from memory of the studentized range tables
    assertEquals(3.633, spread.coverage(), 5e-4);
    assertTrue(spread.is(Verdict.CONFORMING));
  }

  @Test
  void aStaffReadsDownward() {
    InventedJob job = new InventedJob().meter("level", STAFF, 0.0005, 0);
    job.read("arrival", STAFF, "slab.A1", 1.500).read("arrival", STAFF, "slab.A4", 1.490);
    Outcome spread = job.reduced("arrival").outcome("slab-level", "slab").orElseThrow();
    assertTrue(spread.aside().startsWith("highest at slab corner A4"), spread.aside());
  }

  @Test
  void aSlipOnTheStaffIsToldAsTheReadingHasIt() {
    InventedJob job = new InventedJob().meter("level", STAFF, 0.0003, 0);
    for (int round = 0; round < 3; round++) {
      job.read("arrival", STAFF, "slab.A1", 1.500 + (round == 2 ? 0.020 : 0))
          .read("arrival", STAFF, "slab.A4", 1.501);
    }
    String text = job.reduced("arrival").notes().get(0).text();
    assertTrue(text.contains("the staff on slab corner A1 reads 20.0 mm too high"), text);
  }

  @Test
  void whenTwoReadingsOfOnePointDisagreeItIsSaidSo() {
    InventedJob job = new InventedJob().meter("level", STAFF, 0.0003, 0);
    job.read("arrival", STAFF, "slab.A1", 1.500)
        .read("arrival", STAFF, "slab.A1", 1.520)
        .read("arrival", STAFF, "slab.A4", 1.501);
    String text = job.reduced("arrival").notes().get(0).text();
    assertTrue(
        text.contains(
            "in the readings of the staff on slab corner A1, but it cannot be told in which"),
        text);
  }

  /** By ratio, the limit works on the greatest distance between the points: √(18² + 9²)/2000 m. */
  @Test
  void aLimitByRatioWorksOnTheExtentOfThePoints() {
    InventedJob job = levels(0.100, 0.103, 0.106, 0.104);
    job.tolerances.put(
        "slab-level",
        new Tolerance(new LimitRule.Ratio(2000, java.util.OptionalDouble.empty()), "invented"));
    Outcome spread = job.reduced("arrival").outcome("slab-level", "slab").orElseThrow();
    assertEquals(
        Math.sqrt(18 * 18 + 9 * 9) / 2000,
        spread.limits().orElseThrow().upper().orElseThrow(),
        1e-12);
  }

  /** Spread 8 mm, limit 10 mm: 2 mm = 1.645·√2·u at u = 0.860 mm, U = 3.633·u = 3.1 mm. */
  @Test
  void anUndecidedSpreadIsToldByTheRuleThatDecidesIt() {
    InventedJob job =
        new InventedJob().meter("level", HEIGHT, 0.0015, 0).limit("slab-level", 0.010);
    double[] levels = {0.100, 0.103, 0.108, 0.104};
    for (int i = 0; i < 4; i++) {
      job.read("arrival", HEIGHT, "slab." + CORNERS.get(i), levels[i]);
    }
    Outcome spread = job.reduced("arrival").outcome("slab-level", "slab").orElseThrow();
    assertTrue(spread.is(Verdict.UNDECIDED));
    assertTrue(spread.remedy().contains("from 5.4 mm to 3.1 mm"), spread.remedy());
    assertTrue(spread.remedy().startsWith("Read it 3 times more."), spread.remedy());
  }

  @Test
  void levelsOfPointsAreAgainstTheirMean() {
    StageFindings found = levels(0.100, 0.104, 0.104, 0.100).reduced("arrival");
    assertEquals(
        -0.002, found.outcome("slab-level-point", "slab.A1").orElseThrow().deviation(), 1e-12);
    assertEquals(0.002, Objects.requireNonNull(found.levels().get("slab.A4")).levelMetres(), 1e-12);
  }

  @Test
  void seatsArePackedFromThePlatesInStock() {
    InventedJob job = new InventedJob().meter("level", HEIGHT, 0.0002, 0);
    job.platesMetres = List.of(0.001, 0.002, 0.003, 0.005, 0.010);
    Outcome seats =
        job.read("arrival", HEIGHT, "seat.A2", 0.0958)
            .read("arrival", HEIGHT, "seat.A3", 0.1000)
            .read("arrival", HEIGHT, "seat.B2", 0.0989)
            .reduced("arrival")
            .outcome("seat-level", "seats")
            .orElseThrow();
    assertTrue(seats.remedy().contains("A2: 3 + 1 mm; B2: 1 mm"), seats.remedy());
  }

  private static List<String> next(StageFindings found) {
    return found.notes().stream()
        .filter(note -> note.kind() == Note.Kind.NEXT_MEASUREMENT)
        .map(Note::text)
        .toList();
  }

  @Test
  void whileNothingChecksTheLevelsASecondSetUpIsAskedFor() {
    assertEquals(List.of(), next(levels(0.100, 0.101, 0.102, 0.101).reduced("arrival")));
    List<String> next = next(levels(0.100, 0.105, 0.110, 0.104).reduced("arrival"));
    assertEquals(1, next.size());
    assertTrue(next.get(0).contains("set the level up elsewhere"), next.get(0));
  }

  @Test
  void ofCheckedLevelsTheWorstPointIsReadAgain() {
    InventedJob job = levels(0.100, 0.105, 0.110, 0.104);
    job.read("arrival", HEIGHT, "slab.A1", 0.1003)
        .read("arrival", HEIGHT, "slab.A4", 0.1052)
        .read("arrival", HEIGHT, "slab.B4", 0.1099);
    List<String> next = next(job.reduced("arrival"));
    assertEquals(1, next.size(), next.toString());
    assertTrue(
        next.get(0)
            .startsWith(
                "Next, read the level of slab corner B1 once more: it brings the worst point, slab corner"),
        next.get(0));
  }
}
