package datumpeg.bridge.jobfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JobFileMistakesTest {

  @Test
  void unknownKeyIsRefusedWithItsPlaceAndTheNearestKey() {
    assertEquals(
        "shed.toml:15:1: The key 'building.eave_hieght' is unknown; the nearest is 'eave_height'."
            + "\nshed.toml:12:1: The key 'building.eave_height' is missing.",
        sortedLast(messageWith("eave_height = \"3.6 m\"", "eave_hieght = \"3.6 m\"")));
  }

  /** The two lines in the other order: the place of a missing key is its table's. */
  private static String sortedLast(String message) {
    String[] lines = message.split("\n");
    return lines[1] + "\n" + lines[0];
  }

  @Test
  void unknownTableIsRefusedWithTheNearest() {
    assertEquals(
        "shed.toml:39:1: The table 'tolerance' is unknown; the nearest is 'tolerances'.",
        messageWith("[tolerances]", "[tolerance]"));
  }

  @Test
  void baysThatDoNotSumArePointedAtAndBothSumsPrinted() {
    assertEquals(
        "shed.toml:18:1: The bays sum to 17900 mm (6000 mm + 5900 mm + 6000 mm), but"
            + " length − 2 · end_line_offset is 18000 mm: the bays are 100 mm too short.",
        messageWith("bays = [\"6 m\", \"6 m\", \"6 m\"]", "bays = [\"6 m\", \"5.9 m\", \"6 m\"]"));
  }

  @Test
  void endLineOffsetCountsTwiceInTheSumOfTheBays() {
    assertTrue(
        messageWith("end_line_offset = \"0 mm\"", "end_line_offset = \"50 mm\"")
            .contains("length − 2 · end_line_offset is 17900 mm: the bays are 100 mm too long."));
  }

  @Test
  void severalMistakesAreToldTogetherInTheOrderOfTheFile() {
    String text =
        JobTexts.larkriseWith("span = \"9 m\"", "span = \"9\"")
            .replace("rafter_depth = \"150 mm\"", "rafter_depth = \"-150 mm\"")
            .replace("slab-square = \"8 mm\"", "slab-sqare = \"8 mm\"")
            .replace("quantity = \"distance\"", "quantity = \"distanse\"");
    String[] lines = message(text).split("\n");
    assertEquals(4, lines.length, message(text));
    assertTrue(
        lines[0].startsWith("shed.toml:13:1: 'building.span': '9' is not a value"), lines[0]);
    assertTrue(
        lines[1].startsWith("shed.toml:26:1: 'sections.rafter_depth' is -150 mm; expected more"),
        lines[1]);
    assertTrue(lines[2].contains("the nearest is 'slab-square'"), lines[2]);
    assertTrue(lines[3].contains("the nearest is 'distance'"), lines[3]);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "span = \"9 m\" | span = 9 | 13:1: 'building.span' is the number 9; expected a text with a unit",
        "span = \"9 m\" | span = \"9 deg\" | 'building.span': '9 deg' is an angle; expected a length",
        "span = \"9 m\" | span = \"0 m\" | 'building.span' is 0 m; expected more than 0.",
        "pitch = \"10 deg\" | pitch = \"95 deg\" | 'building.pitch' is 90 deg or more",
        "pitch = \"10 deg\" | pitch = \"-5 deg\" | 'building.pitch' is -5 deg; expected 0 or more.",
        "roof = \"gable\" | roof = \"hip\" | 'building.roof' is \"hip\"; expected one of gable, mono",
        "roof = \"gable\" | roof = \"Gable\" | the nearest is 'gable'",
        "column_depth = \"150 mm\" | column_depth = \"4.5 m\" | leaves no clear span",
        "id = \"larkrise-01\" | id = \"lark rise\" | 2:1: 'job.id' is \"lark rise\"; expected letters, digits and -",
        "crew = \"Amber\" | crew = \" \" | 6:1: 'job.crew' is blank",
        "started = 2026-03-02 | started = \"2026-03-02\" | expected a date without quotes",
        "erected_from = 1 | erected_from = 2 | 'job.erected_from' is 2; expected an end frame, 1 or 4.",
        "erected_from = 1 | bearings = 1 | 'job.bearings' is unknown; the nearest is 'bearing'",
        "\"slab.A4\", \"seat | \"slab.A5\", \"seat | 30:28: The slab has no corner A5; its corners are A1, A4, B4, B1",
        "\"seat.A2\" | \"seat.A9\" | seat.A9 is not in the plan; its grid runs from A1 to B4.",
        "\"seat.A2\" | \"base.A2\" | 'base.A2' is not a point to be levelled",
        "slab.@(9.0;4.5) | slab.@(9.0;45) | 30:61: slab.@(9.0;45) lies beside the slab's outline.",
        "A4 = [\"18 m\",\"0 m\"] | A4 = [\"18 m\"] | 'slab.corners.A4' has 1 coordinates; expected two",
        "A4 = [\"18 m\",\"0 m\"] | A4 = [\"0 m\",\"0 m\"] | Two corners of the slab stand in the same place",
        "\"seat.A2\", | \"seat.B2\", | 30:50: seat.B2 is there twice.",
        "A4 = [\"18 m\",\"0 m\"], B4 = [\"18 m\",\"9 m\"] | B4 = [\"18 m\",\"9 m\"], A4 = [\"18 m\",\"0 m\"] | 29:1: The slab's sides A1-B4 and A4-B1 cross; expected the corners in order",
        "\"10 mm\"]|\"0 mm\"] | 31:43: 'slab.plates[5]' is 0 mm; expected more than 0.",
        "wall = \"end 1\" | wall = \"end 2\" | expected one of end 1, end n, side A, side B",
        "from = \"2.5 m\" | from = \"6.5 m\" | The opening D1 ends 9380 mm along end 1, which is only 9000 mm long.",
        "opening_width = \"2.88 m\" | curtain_width = \"3 m\" | either 'opening_width', or 'curtain_width' and 'track_width'",
        "opening_width = \"2.88 m\" | opening_wdth = \"3 m\" | 'openings.D1.opening_wdth' is unknown; the nearest is 'opening_width'",
        "\"en1090-column-spacing-1\" | \"en1090-colum-spacing-1\" | the nearest is 'en1090-column-spacing-1'",
        "slab-size = \"10 mm\" | slab-size = \"10\" | 'tolerances.slab-size': '10' is not a value with a unit",
        "slab-size = \"10 mm\" | slab-size = 10 | 'tolerances.slab-size' is the number 10; expected a text with a unit",
        "upper = \"5 mm\" | uper = \"5 mm\" | the nearest is 'upper'",
        "upper = \"5 mm\" | upper = \"-11 mm\" | expected the lower at or below 0",
        "ratio = 500 | ratio = 0 | 'tolerances.column-plumb.ratio' is 0.0; expected more than 0.",
        "ratio = 500, | | A limit is either 'limit', or 'lower' or 'upper' or both",
        "reject = 0.05 | guard = \"ISO\" | 'decision.guard' is \"ISO\"; expected \"ISO 14253-1\"",
        "[decision] | [props] | The key 'props.attachment' is missing",
        "reject = 0.05 | guard_factor = 1 | 'guard_factor' needs a 'guard' beside it.",
        "coverage = 2 | coverage = 0 | 'meters.laser.coverage' is not more than 0",
        "coverage = 2 | repeatability = \"1 mm\" | is more than the whole standard uncertainty",
        "common = \"0.02 deg\" | | The meter has no accuracy",
        "common = \"0.02 deg\" | common = \"2 mm\" | 'meters.spirit.common': '2 mm' is a length; expected an angle",
        "slab = \"1 mm\" | slabs = \"1 mm\" | 'points.slabs' is unknown; the nearest is 'slab'",
        "accept = 0.95 | accept = 0.04 | expected 0 < reject < accept < 1",
        "accept = 0.95 | accept = \"high\" | 'decision.accept' is the text \"high\"; expected a number",
        "after = \"arrival\" | after = \"arival\" | There is no stage 'arival' to come after; the nearest is 'arrival'.",
        "after = \"arrival\" | after = \"curing\" | There is no stage 'curing' to come after",
        "[stages.curing] | [stages.lift] | 'lift' is a standard stage already",
        "[\"slab-level\"] | [\"slab-levl\"] | 'slab-levl' is not a check; the nearest is 'slab-level'.",
        "hold_point = true | hold_point = \"yes\" | expected true or false",
        "[sections] | [section] | The table [sections] is missing",
        "crew = \"Amber\" | crew = | This is not TOML",
      })
  void mistakeIsToldInWords(String old, String replacement, String expected) {
    String message = messageWith(old, replacement == null ? "" : replacement);
    assertTrue(message.contains(expected), message);
    assertTrue(message.startsWith("shed.toml:") || message.contains("is missing"), message);
  }

  @Test
  void stagesThatFollowEachOtherInARingAreRefused() {
    String message =
        messageWith(
            "[stages.curing]\nafter = \"arrival\"",
            "[stages.sealing]\nafter = \"curing\"\n[stages.curing]\nafter = \"sealing\"");
    assertTrue(
        message.contains("sealing comes after curing, which comes after no standard stage"),
        message);
  }

  @Test
  void emptyTextLacksTheThreeTablesEveryJobHas() {
    assertEquals(
        """
        shed.toml: The table [sections] is missing.
        shed.toml: The table [building] is missing.
        shed.toml: The table [job] is missing.\
        """,
        message(""));
  }

  @Test
  void fileFullOfMistakesTellsTheFirstTwenty() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 30; i++) {
      text.append("unknown").append(i).append(" = 1\n");
    }
    String message = message(text.toString());
    assertEquals(21, message.split("\n").length);
    assertTrue(message.endsWith("and 13 more."), message);
  }

  private static String messageWith(String old, String replacement) {
    return message(JobTexts.larkriseWith(old, replacement));
  }

  private static String message(String text) {
    JobFileException failure =
        assertThrows(JobFileException.class, () -> JobFile.read(text, "shed.toml"));
    assertEquals(2, failure.exitStatus());
    return String.valueOf(failure.getMessage());
  }
}
