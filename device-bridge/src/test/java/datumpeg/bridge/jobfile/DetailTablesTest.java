package datumpeg.bridge.jobfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Stage;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tables of posts, anchors, gutters, flatness and temperature; what is added to a stage. */
class DetailTablesTest {
  /** Where the first line below stands in the file. */
  private static final int FIRST_LINE = JobTexts.LARKRISE.split("\n", -1).length;

  private static final String DETAILS =
      """
      [mullions]
      end_1 = ["3 m", "6 m"]
      end_n = ["4.5 m"]
      height = "4 m"
      [anchors]
      edge_distance = "75 mm"
      across = "80 mm"
      [gutters.A]
      outlet = "18 m"
      fall = "1:500"
      bracket_spacing = "900 mm"
      [flatness]
      straightedge = "2 m"
      spacing = "3 m"
      step = "12 in"
      lines = { L1 = [["1 m", "1 m"], ["17 m", "1 m"]] }
      least_ff = 25
      least_fl = 20
      [meters.tape]
      quantity = "distance"
      expanded_uncertainty = "2 mm"
      edge = "118 mm"
      [temperature]
      steel_range = ["10 degC", "30 degC"]
      read_within = "2 K"
      [stages.lift]
      checks = ["eave-level", "column-plumb"]
      questions = { props-tight = "Is every prop tight?" }
      steel_temperature = "50 degF"
      """;

  private static Job read(String details) {
    return JobFile.read(JobTexts.LARKRISE + details, "shed.toml");
  }

  @Test
  void detailsAreReadWhole() {
    var details = read(DETAILS).setOut().details();
    assertEquals(
        List.of("1.M1", "1.M2", "4.M1"), details.mullions().stream().map(m -> m.place()).toList());
    assertEquals(0.075, details.anchors().orElseThrow().edgeDistanceMetres());
    assertEquals(0.002, Objects.requireNonNull(details.gutters().get('A')).fall(), 1e-12);
    FlatnessPlan flatness = details.flatness().orElseThrow();
    assertEquals(2, flatness.straightedgeMetres());
    assertEquals(FlatnessPlan.FOOT_STEP_METRES, flatness.stepMetres(), 1e-12);
    assertEquals(16, Objects.requireNonNull(flatness.lines().get("L1")).lengthMetres(), 1e-12);
    assertEquals(OptionalDouble.of(25), flatness.leastFlatness());
    assertEquals(
        0.118,
        Objects.requireNonNull(read(DETAILS).meters().get("tape")).edgeMetres().orElseThrow(),
        1e-12);
  }

  @Test
  void aStandardStageKeepsItsPlaceAndGetsWhatTheJobAdds() {
    Job job = read(DETAILS);
    Stage lift = job.stage("lift").orElseThrow();
    List<String> standard = Stage.standard("lift").orElseThrow().checks();
    assertEquals(standard.size() + 1, lift.checks().size());
    assertEquals("eave-level", lift.checks().get(standard.size()));
    assertEquals(Map.of("props-tight", "Is every prop tight?"), lift.questions());
    assertTrue(lift.holdPoint());
    assertEquals(
        "lift",
        job.stages().get(job.stages().indexOf(job.stage("standing").orElseThrow()) + 1).id());
    assertFalse(
        read("[stages.lift]\nhold_point = false\n").stage("lift").orElseThrow().holdPoint());
  }

  @Test
  void temperaturesAreReadInEitherScale() {
    var steel = read(DETAILS).steel();
    assertEquals(10, steel.read("lift").orElseThrow(), 1e-9);
    assertTrue(steel.read("tightening").isEmpty());
    assertEquals(30, steel.highestCelsius());
    assertEquals(2, steel.withinKelvin());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "end_1 = | end1 = | 1 | The key 'mullions.end1' is unknown; the nearest is 'end_1'",
        "\"3 m\", \"6 m\" | \"6 m\", \"3 m\" | 1 | expected ascending places between 0 and the span",
        "\"4.5 m\" | \"9.5 m\" | 2 | expected ascending places between 0 and the span",
        "height = \"4 m\" | height = \"0 m\" | 3 | 'mullions.height' is 0 m; expected more than 0",
        "edge_distance | edge_distanse | 5 | 'anchors.edge_distanse' is unknown; the nearest is 'edge_distance'",
        "\"75 mm\" | \"-75 mm\" | 5 | 'anchors.edge_distance' is -75 mm; expected more than 0",
        "across = \"80 mm\" | across = 80 | 6 | 'anchors.across' is the number 80; expected a text with a unit",
        "[gutters.A] | [gutters.C] | 7 | 'gutters.C' is unknown",
        "outlet = \"18 m\" | outlet = \"19 m\" | 8 | is 19000 mm from end 1; the building is 18000 mm long",
        "fall = \"1:500\" | fal = \"1:500\" | 9 | 'gutters.A.fal' is unknown; the nearest is 'fall'",
        "fall = \"1:500\" | fall = \"5 mm\" | 9 | 'gutters.A.fall': '5 mm' is a length; expected an angle",
        "straightedge | straight_edge | 12 | 'flatness.straight_edge' is unknown; the nearest is 'straightedge'",
        "step = \"12 in\" | step = \"250 mm\" | 14 | expected 300 mm or 12 in",
        "[\"17 m\", \"1 m\"]] | [\"17 m\"]] | 15 | needs two places of two lengths each, x and y",
        "[[\"1 m\", \"1 m\"], | [ | 15 | 'flatness.lines.L1' has 1 places; expected two",
        "\"17 m\", \"1 m\" | \"1.1 m\", \"1 m\" | 15 | is 100 mm long; expected at least one step",
        "least_ff = 25 | least_ff = 0 | 16 | 'flatness.least_ff' is not more than 0",
        "least_fl = 20 | least_fl = \"20\" | 17 | expected a number",
        "edge = \"118 mm\" | edg = \"118 mm\" | 21 | 'meters.tape.edg' is unknown; the nearest is 'edge'",
        "edge = \"118 mm\" | edge = \"0 mm\" | 21 | 'meters.tape.edge' is 0 mm; expected more than 0",
        "steel_range | steel_rang | 23 | 'temperature.steel_rang' is unknown; the nearest is 'steel_range'",
        "\"10 degC\" | \"10 mm\" | 23 | is \"10 mm\"; expected a temperature such as \"12 degC\"",
        "\"10 degC\", | | 23 | has 1 temperatures; expected the lowest and the highest",
        "\"10 degC\" | \"40 degC\" | 22 | expected the lower first",
        "\"2 K\" | \"warm\" | 24 | expected a difference of temperatures such as \"3 K\"",
        "steel_temperature | steel_temperatur | 28 | 'stages.lift.steel_temperatur' is unknown; the nearest is 'steel_temperature'",
        "\"50 degF\" | 50 | 28 | 'stages.lift.steel_temperature' is the number 50",
        "\"eave-level\" | \"eave-levels\" | 26 | 'eave-levels' is not a check; the nearest is 'eave-level'",
        "props-tight = | \"props tight\" = | 27 | 'props tight' is not a name for a question",
      })
  void mistakeIsToldAtItsLineInWords(String old, String now, int line, String expected) {
    assertTrue(DETAILS.contains(old), old);
    String text = DETAILS.replace(old, now == null ? "" : now);
    String message =
        String.valueOf(assertThrows(JobFileException.class, () -> read(text)).getMessage());
    assertTrue(
        message
            .lines()
            .anyMatch(
                told ->
                    told.startsWith("shed.toml:" + (FIRST_LINE + line) + ":")
                        && told.contains(expected)),
        "line " + (FIRST_LINE + line) + ": " + message);
  }
}
