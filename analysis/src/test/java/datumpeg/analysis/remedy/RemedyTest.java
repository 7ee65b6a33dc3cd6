package datumpeg.analysis.remedy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.Stage;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RemedyTest {
  private static final List<Double> STOCK = List.of(0.001, 0.002, 0.003, 0.005, 0.010);

  @Test
  void packsWithTheFewestPlates() {
    Map<String, Double> levels = new LinkedHashMap<>();
    levels.put("A1", 0.0);
    levels.put("A2", -0.0042);
    levels.put("A3", -0.0133);
    Packing packing = Packing.toTheHighest(levels, STOCK, 0);
    assertEquals(List.of(), packing.plates().get("A1"));
    assertEquals("A2: 3 + 1 mm; A3: 10 + 3 mm", packing.words());
    assertEquals(0.0002, packing.leftMetres().getOrDefault("A2", Double.NaN), 1e-9);
  }

  @Test
  void leavesWhatTheLevelCannotSee() {
    Packing packing = Packing.toTheHighest(Map.of("A1", 0.0, "A2", -0.0009), STOCK, 0.001);
    assertEquals("", packing.words());
  }

  @Test
  void withoutPlatesNothingIsPacked() {
    Packing packing = Packing.toTheHighest(Map.of("A1", 0.0, "A2", -0.009), List.of(), 0);
    assertEquals(List.of(), packing.plates().get("A2"));
    assertEquals(0.009, packing.leftMetres().getOrDefault("A2", Double.NaN), 1e-12);
  }

  @Test
  void movesTheFewestFramesTheLeast() {
    List<String> frames = List.of("A1", "A2", "A3", "A4");
    Map<String, Double> moves =
        Shifting.moves(frames, bays(-0.0086, 0.0086, -0.006, 0.0188, -0.0065));
    assertEquals(List.of("A2"), List.copyOf(moves.keySet()));
    assertEquals(0.0124, moves.getOrDefault("A2", Double.NaN), 1e-9);
    assertEquals("A2 by 12.4 mm toward end n", Shifting.words(moves));
  }

  /** By hand: 6 mm each way leave three bays of 6 mm; no single frame can take 18 from 8.4. */
  @Test
  void aBayThatIsLongByMoreThanItsNeighboursCanTakeIsSharedByThree() {
    List<String> frames = List.of("A1", "A2", "A3", "A4");
    Map<String, Double> moves = Shifting.moves(frames, bays(-0.0084, 0.0084, 0.0, 0.018, 0.0));
    assertEquals(List.of("A2", "A3"), List.copyOf(moves.keySet()));
    assertEquals(0.006, moves.getOrDefault("A2", Double.NaN), 1e-9);
    assertEquals(-0.006, moves.getOrDefault("A3", Double.NaN), 1e-9);
  }

  /** Each bay is inside, but together they are 12 mm long where 6 are allowed: an end moves. */
  @Test
  void theOverallLengthIsBroughtInsideToo() {
    List<String> frames = List.of("A1", "A2", "A3");
    List<Shifting.Bay> bays = bays(-0.008, 0.008, 0.006, 0.006);
    assertEquals(Map.of(), Shifting.moves(frames, bays));
    Map<String, Double> moves =
        Shifting.moves(frames, bays, Optional.of(new Shifting.Bay(0.012, -0.006, 0.006)));
    assertEquals(1, moves.size());
    double move = moves.values().iterator().next();
    assertEquals(0.006, Math.abs(move), 1e-6);
  }

  /**
   * Against all subsets of frames by trial, for 300 rows of up to seven frames: nobody gets by with
   * fewer moved frames, and the moves told do bring every bay inside. Fixed seed.
   */
  @Test
  void noFewerFramesCouldBeMoved() {
    SplittableRandom random = new SplittableRandom(20260304L);
    for (int row = 0; row < 300; row++) {
      int frames = 2 + random.nextInt(6);
      double[] deviations = new double[frames - 1];
      for (int i = 0; i < deviations.length; i++) {
        deviations[i] = random.nextInt(-30, 31) / 1000.0;
      }
      List<String> names = IntStream.range(0, frames).mapToObj(i -> "A" + (i + 1)).toList();
      Map<String, Double> moves = Shifting.moves(names, bays(-0.008, 0.008, deviations));
      for (int bay = 0; bay < deviations.length; bay++) {
        double after =
            deviations[bay]
                + moves.getOrDefault("A" + (bay + 2), 0.0)
                - moves.getOrDefault("A" + (bay + 1), 0.0);
        assertTrue(Math.abs(after) <= 0.008 + 1e-6, "bay " + after);
      }
      assertEquals(fewest(deviations, 0.008), moves.size(), java.util.Arrays.toString(deviations));
    }
  }

  /** Tries every set of frames that stay: between two of them only the sum of the bays counts. */
  private static int fewest(double[] deviations, double limit) {
    int frames = deviations.length + 1;
    int most = 0;
    for (int set = 1; set < 1 << frames; set++) {
      int before = -1;
      boolean possible = true;
      for (int frame = 0; frame < frames; frame++) {
        if ((set >> frame & 1) == 1) {
          if (before >= 0) {
            double sum = 0;
            for (int bay = before; bay < frame; bay++) {
              sum += deviations[bay];
            }
            possible &= Math.abs(sum) <= limit * (frame - before) + 1e-9;
          }
          before = frame;
        }
      }
      most = possible ? Math.max(most, Integer.bitCount(set)) : most;
    }
    return frames - most;
  }

  /** Limits of −4 and +10 mm: A2 shifted alone would leave both bays at −7 mm, outside them. */
  @Test
  void lowerLimitsCountAsMuchAsUpperOnes() {
    List<String> frames = List.of("A1", "A2", "A3");
    Map<String, Double> moves = Shifting.moves(frames, bays(-0.004, 0.010, -0.014, 0.0));
    assertEquals(List.of("A1"), List.copyOf(moves.keySet()));
    assertEquals(-0.014, moves.getOrDefault("A1", Double.NaN), 1e-9);
  }

  private static List<Shifting.Bay> bays(double least, double most, double... deviations) {
    return java.util.Arrays.stream(deviations)
        .mapToObj(deviation -> new Shifting.Bay(deviation, least, most))
        .toList();
  }

  @Test
  void severalFramesAreShiftedWhereOneDoesNotHelp() {
    List<String> frames = List.of("A1", "A2", "A3", "A4", "A5", "A6");
    Map<String, Double> moves =
        Shifting.moves(frames, bays(-0.005, 0.005, 0.03, -0.05, 0.05, -0.05, 0.03));
    assertEquals(4, moves.size(), "two stay: " + moves);
  }

  @Test
  void aRowThatIsRightIsLeft() {
    assertEquals(Map.of(), Shifting.moves(List.of("A1", "A2"), bays(-0.005, 0.005, 0.004)));
  }

  @Test
  void whatCanMoveDependsOnTheStage() {
    assertTrue(Movability.at("standing", Stage.STANDARD).bases());
    assertTrue(!Movability.at("lift", Stage.STANDARD).bases());
    assertTrue(Movability.at("tightening", Stage.STANDARD).tops());
    assertTrue(!Movability.at("roofing", Stage.STANDARD).tops());
  }

  @Test
  void aStageOfTheJobsOwnCountsAsTheOneBeforeIt() {
    List<Stage> stages = new java.util.ArrayList<>(Stage.STANDARD);
    stages.add(1, new Stage("curing", "slab again", List.of(), Map.of(), true));
    assertTrue(Movability.at("curing", stages).bases());
  }
}
