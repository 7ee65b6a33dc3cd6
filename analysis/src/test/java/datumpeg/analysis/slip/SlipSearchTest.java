package datumpeg.analysis.slip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.adjust.ChangeEffects;
import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.MeasuredDistance;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.adjust.PlanPoint;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SlipSearchTest {
  private static final int SEEDS = 12;
  private static final List<String> CORNERS = List.of("slab.A1", "slab.A2", "slab.B2", "slab.B1");

  private static SlipReading distance(String id, String target, double metres) {
    return PlantedSlips.reading(
        id, Target.parse(MeasuredQuantity.DISTANCE, target), metres, 0, "set 1");
  }

  /** The braced quadrilateral 12 m × 9 m of room adjust's description, AC as given. */
  private static List<SlipReading> quad(double ac) {
    return List.of(
        distance("AB", "slab.A1-slab.A2", 12.003),
        distance("BC", "slab.A2-slab.B2", 8.998),
        distance("CD", "slab.B2-slab.B1", 11.998),
        distance("DA", "slab.B1-slab.A1", 9.004),
        distance("AC", "slab.A1-slab.B2", ac),
        distance("BD", "slab.A2-slab.B1", 14.991));
  }

  private static SlipNetwork network(List<SlipReading> readings) {
    List<PlanPoint> points =
        List.of(
            new PlanPoint("slab.A1", 0, 0),
            new PlanPoint("slab.A2", 12, 0),
            new PlanPoint("slab.B2", 12, 9),
            new PlanPoint("slab.B1", 0, 9));
    assertEquals(CORNERS, points.stream().map(PlanPoint::name).toList());
    return SlipNetworks.of(
        new DistanceNetwork(
            "slab.A1",
            "slab.A2",
            points,
            readings.stream()
                .map(
                    r ->
                        new MeasuredDistance(
                            r.target().first().text(),
                            r.target().second().text(),
                            Observation.independent(r.id(), r.value(), 0.0015)))
                .toList()));
  }

  private static SlipFindings searched(List<SlipReading> readings) {
    return SlipSearch.search(network(readings), readings, SlipOptions.USUAL);
  }

  /** Six distances, five unknowns: v'Pv = 2.7725 (numpy and R) passes at 5 %. */
  @Test
  void theWorkedQuadAgreesAndNothingIsSearched() {
    SlipFindings found = searched(quad(15.006));
    assertEquals(SlipFindings.State.AGREES, found.state());
    assertEquals(2.7725, found.test().orElseThrow().squareSum(), 1e-4);
    assertTrue(found.suspicions().isEmpty());
  }

  @Test
  void withOneRedundancyASlipIsSeenNotLocatedAndARepeatIsNamed() {
    SlipFindings found = searched(quad(15.037));
    assertEquals(SlipFindings.State.EXPLAINED, found.state());
    assertTrue(found.detectableOnly());
    assertEquals(
        6, found.leading().stream().flatMap(s -> s.readingIds().stream()).distinct().count());
    NextReading next = found.next().orElseThrow();
    assertTrue(next.again());
    assertTrue(next.separates() > 0 && next.separates() < next.pairs());
    Suspicion first = found.suspicions().get(0);
    assertEquals(first.slip().readings().get(0).target().text(), next.target());
    assertEquals("Read the distance from slab corner A1 to slab corner A2 once more", next.words());
  }

  /** A metre fits a diagonal alone: on a side it would take 1.25 or 1.67 m. */
  @Test
  void aWholeMetreInTheQuadFitsTheTwoDiagonalsOnly() {
    SlipFindings found = searched(quad(14.006));
    List<List<String>> metres =
        found.leading().stream()
            .filter(s -> s.slip().kind() == SlipKind.WHOLE_UNIT)
            .map(Suspicion::readingIds)
            .toList();
    assertTrue(metres.contains(List.of("AC")), found.leading().toString());
    assertFalse(metres.contains(List.of("AB")));
    assertFalse(found.located());
    String words =
        found.suspicions().stream()
            .filter(s -> s.readingIds().equals(List.of("AC")))
            .filter(s -> s.slip().kind() == SlipKind.WHOLE_UNIT)
            .findFirst()
            .orElseThrow()
            .words();
    assertTrue(
        words.startsWith(
            "A whole metre dropped in the distance from slab corner A1 to slab corner B2: 14006.0 mm"
                + " would be"),
        words);
    assertTrue(words.contains("15006.0 mm (+1000.0 mm)"), words);
  }

  @Test
  void plantedSlipsAreSeenAndTheirReadingsStandAmongTheFirst() {
    PlantedSlips.all()
        .forEach(
            (name, slips) -> {
              SlipShares shares = SlipShares.of(slips, SEEDS, 1);
              boolean halfKnown = name.startsWith("tilts: face");
              assertTrue(shares.seen() >= SEEDS - 3, name + " " + shares);
              assertTrue(
                  shares.firstTwo() >= (halfKnown ? 0.3 : 0.7) * shares.seen(),
                  name + " " + shares);
            });
  }

  /** 400 clean slabs: 20 expected to be doubted at 5 %, standard deviation 4.4. */
  @Test
  void cleanNetworksAreDoubtedNoOftenerThanTheLevelSays() {
    int doubted = 0;
    for (long seed = 1; seed <= 400; seed++) {
      SlipFindings found = PlantedDistances.cleanSlab(seed).searched();
      doubted += found.state() == SlipFindings.State.AGREES ? 0 : 1;
    }
    assertTrue(doubted >= 7 && doubted <= 33, doubted + " of 400");
  }

  /** Two routes: the closed form and adjusting again, on a linear network. */
  @Test
  void closedFormOfAChangeIsTheAdjustmentOfTheChangedValues() {
    List<LineDifference> differences = new ArrayList<>();
    NormalDraws draws = new NormalDraws(5);
    for (int i = 0; i < 4; i++) {
      for (int j = i + 1; j < 5; j++) {
        Observation observation =
            Observation.independent(i + "-" + j, 6.0 * (j - i) + draws.next(0.002), 0.0015);
        differences.add(new LineDifference("s" + i, "s" + j, observation));
      }
    }
    SlipNetwork line =
        SlipNetworks.of(new LineNetwork(List.of("s0", "s1", "s2", "s3", "s4"), differences));
    ChangeEffects effects = line.fit(line.observations()).orElseThrow().changeEffects();
    Map<String, Double> change = Map.of("0-1", 0.02, "2-4", -0.013);
    List<Observation> changed =
        line.observations().stream()
            .map(
                o ->
                    Observation.independent(
                        o.id(), o.observed() + change.getOrDefault(o.id(), 0.0), 0.0015))
            .toList();
    Fit fit = line.fit(changed).orElseThrow();
    double again = fit.test().orElseThrow().squareSum();
    assertEquals(again, effects.squareSum(change), 1e-8 * again);
    assertEquals(again, effects.after(change).squareSum(), 1e-8 * again);
    assertEquals(
        fit.changeEffects().pull(Map.of("0-1", 1.0)),
        effects.after(change).pull(Map.of("0-1", 1.0)),
        1e-6);
  }

  /** So gross that no figure fits at all: 92 feet for 29. */
  @Test
  void digitsTransposedInFeetAndInchesAreFound() {
    List<SlipReading> readings = PlantedDistances.distances(new NormalDraws(3), 1);
    Target target = Target.parse(MeasuredQuantity.DISTANCE, "slab.A2-slab.B2");
    SlipReading right =
        readings.stream().filter(r -> r.target().equals(target)).findFirst().orElseThrow();
    long eighths = Math.round(right.value() / 0.0254 * 8);
    assertEquals(29, eighths / 96);
    String rest = "-" + eighths % 96 / 8 + (eighths % 8 == 0 ? "" : " " + eighths % 8 + "/8");
    WrittenValue written = new WrittenValue("92" + rest, "ft-in");
    double value = DigitSwaps.value(written).orElseThrow();
    readings.set(
        readings.indexOf(right),
        new SlipReading(right.id(), target, value, 0, right.set(), Optional.of(written), 1));
    SlipFindings found =
        SlipSearch.search(PlantedDistances.network(readings), readings, SlipOptions.USUAL);
    assertEquals(SlipKind.TRANSPOSED_DIGITS, found.suspicions().get(0).slip().kind());
    assertTrue(found.suspicions().get(0).words().contains("for 29" + rest + " ft-in"));
    assertTrue(found.located());
  }

  @Test
  void anOffsetGivenForTheMeterIsNamedAsItsEdge() {
    List<SlipReading> readings = PlantedDistances.distances(new NormalDraws(4), 1);
    SlipReading right = readings.get(5);
    readings.set(
        5, PlantedSlips.reading(right.id(), right.target(), right.value() - 0.118, 0, "set 1"));
    SlipFindings found =
        SlipSearch.search(
            PlantedDistances.network(readings),
            readings,
            SlipOptions.USUAL.withEdges(List.of(0.118)));
    Suspicion first = found.suspicions().get(0);
    assertEquals(SlipKind.METER_EDGE, first.slip().kind());
    assertTrue(first.words().contains("edge of 118.0 mm dropped"), first.words());
    assertTrue(found.located());
  }

  @Test
  void twoSlipsAreFoundTogether() {
    PlantedSlips.pairs()
        .forEach(
            (name, slips) -> {
              SlipShares shares = SlipShares.of(slips, SEEDS, 1);
              assertTrue(shares.seen() >= SEEDS - 1, name + " " + shares);
              assertTrue(shares.firstTwo() >= 0.7 * shares.seen(), name + " " + shares);
            });
  }

  @Test
  void theWordsOfTwoSlipsNameBothReadings() {
    List<SlipReading> readings = withSlips(new NormalDraws(6), 1, 2, 11);
    SlipFindings found =
        SlipSearch.search(PlantedDistances.network(readings), readings, SlipOptions.USUAL);
    assertEquals(SlipFindings.State.EXPLAINED, found.state());
    assertTrue(found.takesTwo());
    assertTrue(found.located(), found.leading().toString());
    Suspicion first = found.suspicions().get(0);
    assertEquals(List.of("d003", "d012"), first.readingIds().stream().sorted().toList());
    assertTrue(first.words().contains(", and besides a whole metre added in "), first.words());
  }

  @Test
  void threeSlipsAreNotExplainedByTwo() {
    List<SlipReading> readings = withSlips(new NormalDraws(7), 0.37, 2, 7, 11);
    SlipFindings found =
        SlipSearch.search(PlantedDistances.network(readings), readings, SlipOptions.USUAL);
    assertEquals(SlipFindings.State.NOT_EXPLAINED, found.state());
    assertTrue(found.leading().isEmpty());
    assertFalse(found.located());
    assertFalse(found.takesTwo());
  }

  /** Five points with nine distances: two degrees of freedom, as many as two amounts take up. */
  @Test
  void twoSlipsThatTooLittleChecksAreNotNamedButTheNextDistanceIs() {
    List<SlipReading> readings =
        new ArrayList<>(
            withSlips(new NormalDraws(8), 0.37, 1, 5).stream()
                .filter(r -> !r.target().text().contains("B3"))
                .filter(r -> !r.target().text().equals("slab.A3-slab.B1"))
                .toList());
    assertEquals(9, readings.size());
    SlipNetwork network = PlantedDistances.network(readings);
    SlipFindings found = SlipSearch.search(network, readings, SlipOptions.USUAL);
    assertEquals(2, found.test().orElseThrow().degreesOfFreedom());
    assertEquals(SlipFindings.State.NOT_EXPLAINED, found.state());
    assertTrue(found.next().isPresent());
  }

  /** All fifteen distances with the same amount added to those of the given places. */
  private static List<SlipReading> withSlips(NormalDraws draws, double metres, int... places) {
    List<SlipReading> readings = PlantedDistances.distances(draws, 1);
    for (int at : places) {
      SlipReading right = readings.get(at);
      readings.set(at, PlantedSlips.with(right, right.value() + metres));
    }
    return readings;
  }

  /** Two routes: the closed form of a pair, and adjusting again, on a linear network. */
  @Test
  void closedFormOfAPairIsTheAdjustmentWithBothChanged() {
    NormalDraws draws = new NormalDraws(9);
    List<SlipReading> readings = new ArrayList<>(PlantedLevels.levels(draws));
    for (int at : new int[] {2, 12}) {
      SlipReading right = readings.get(at);
      readings.set(at, PlantedSlips.with(right, right.value() + 0.137 + 0.1 * at));
    }
    PlantedSlips.Planted levels =
        PlantedLevels.levelsWith(readings, SlipKind.SIZE_UNKNOWN, List.of());
    Fit fit = levels.network().fit(levels.network().observations()).orElseThrow();
    ChangeEffects effects = fit.changeEffects();
    SlipTrial trial =
        new SlipTrial(
            levels.network(), fit.test().orElseThrow(), effects, readings, SlipOptions.USUAL);
    List<Slip> slips = PossibleSlips.of(readings, SlipOptions.USUAL);
    List<SlipPairs.Foreseen> pairs = new SlipPairs(effects, 12).best(slips, 2);
    assertEquals(12, pairs.size());
    for (SlipPairs.Foreseen pair : pairs) {
      double again = trial.of(pair.pair()).orElseThrow().score();
      assertEquals(again, pair.score(), 1e-3 * (1 + again), pair.pair().words());
    }
  }

  @Test
  void withoutRedundancyNothingIsChecked() {
    List<SlipReading> readings = quad(14.006).subList(0, 5);
    assertEquals(SlipFindings.State.NOT_CHECKED, searched(readings).state());
    List<SlipReading> few = quad(14.006).subList(0, 2);
    assertEquals(SlipFindings.State.NOT_CHECKED, searched(few).state());
  }

  @Test
  void aReadingThatIsNotInTheNetworkAndOneThatIsNoNumberAreRefused() {
    List<SlipReading> readings = quad(15.006);
    SlipReading stranger = distance("XY", "slab.A1-slab.A2", 12);
    assertThrows(
        IllegalArgumentException.class,
        () -> SlipSearch.search(network(readings), List.of(stranger), SlipOptions.USUAL));
    Target target = Target.parse(MeasuredQuantity.DISTANCE, "slab.A1-slab.A2");
    assertThrows(
        IllegalArgumentException.class,
        () -> new SlipReading("n", target, Double.NaN, 0, "", Optional.empty(), 1));
  }

  @Test
  void allEqualDistancesAreSearchedWithoutFailing() {
    List<SlipReading> readings =
        quad(9).stream().map(r -> distance(r.id(), r.target().text(), 9)).toList();
    assertTrue(
        searched(readings).state() != SlipFindings.State.AGREES, "six equal distances in a plane");
  }

  @Test
  void equalInputsGiveEqualWords() {
    List<String> one = searched(quad(14.006)).suspicions().stream().map(Suspicion::words).toList();
    List<String> two = searched(quad(14.006)).suspicions().stream().map(Suspicion::words).toList();
    assertEquals(one, two);
  }
}
