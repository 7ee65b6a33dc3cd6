package datumpeg.analysis.remedy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.Stage;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    assertEquals(0.0124, moves.getOrDefault("A2", Double.NaN), 1e-12);
    assertEquals("A2 by 12.4 mm toward end n", Shifting.words(moves));
  }

  @Test
  void aBayThatIsLongByMoreThanItsNeighboursCanTakeShiftsAllBehindIt() {
    List<String> frames = List.of("A1", "A2", "A3", "A4");
    Map<String, Double> moves = Shifting.moves(frames, bays(-0.0084, 0.0084, 0.0, 0.018, 0.0));
    assertEquals(List.of("A3", "A4"), List.copyOf(moves.keySet()));
    assertEquals(-0.018, moves.getOrDefault("A4", Double.NaN), 1e-12);
  }

  /** Limits of −4 and +10 mm: A2 shifted alone would leave both bays at −7 mm, outside them. */
  @Test
  void lowerLimitsCountAsMuchAsUpperOnes() {
    List<String> frames = List.of("A1", "A2", "A3");
    Map<String, Double> moves = Shifting.moves(frames, bays(-0.004, 0.010, -0.014, 0.0));
    assertEquals(List.of("A1"), List.copyOf(moves.keySet()));
    assertEquals(-0.014, moves.getOrDefault("A1", Double.NaN), 1e-12);
  }

  private static List<Shifting.Bay> bays(double least, double most, double... deviations) {
    return java.util.Arrays.stream(deviations)
        .mapToObj(deviation -> new Shifting.Bay(deviation, least, most))
        .toList();
  }

  @Test
  void noMoveIsNamedWhenNoSingleShiftHelps() {
    List<String> frames = List.of("A1", "A2", "A3", "A4", "A5", "A6");
    assertEquals(
        Map.of(), Shifting.moves(frames, bays(-0.005, 0.005, 0.03, -0.05, 0.05, -0.05, 0.03)));
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
