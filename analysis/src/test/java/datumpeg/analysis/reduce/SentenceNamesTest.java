package datumpeg.analysis.reduce;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.PLUMB_OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.STAFF;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.tell.Tellings;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * No sentence names a target as it is stored: whole stages with slips of every size are reduced,
 * and every sentence of the findings is read.
 */
class SentenceNamesTest {
  private static final Pattern STORED =
      Pattern.compile("\\b(" + String.join("|", PointName.FEATURES) + ")\\.[@A-Z0-9]");

  private static List<String> sentences(StageFindings found) {
    List<String> sentences = new ArrayList<>();
    found.notes().stream().map(Note::text).forEach(sentences::add);
    found.causes().forEach(cause -> sentences.addAll(List.of(cause.sentence(), cause.action())));
    sentences.add(found.answer().sentence());
    sentences.add(found.answer().first());
    for (Outcome outcome : found.outcomes()) {
      sentences.addAll(List.of(outcome.remedy(), outcome.aside(), Tellings.name(outcome)));
      sentences.add(Tellings.sentence(outcome, found.outcomes()));
    }
    return sentences;
  }

  private static void assertInWords(StageFindings found) {
    for (String sentence : sentences(found)) {
      assertFalse(STORED.matcher(sentence).find(), sentence);
    }
  }

  private static InventedJob job() {
    InventedJob job = new InventedJob();
    CheckNames.ALL.forEach(check -> job.limit(check, 0.006));
    job.meter("laser", DISTANCE, 0.001, 0.0005).meter("clino", TILT, 0.0005, 0.0005);
    return job.meter("rule", OFFSET, 0.001, 0).meter("level", HEIGHT, 0.001, 0);
  }

  /** Every target of a stage, some twice, most right, some off by millimetres or a metre. */
  @Test
  void whatIsFoundOfWholeStagesWithSlips() {
    Random random = new Random(20260402);
    int suspected = 0;
    for (Stage stage : Stage.STANDARD) {
      for (int i = 0; i < 12; i++) {
        InventedJob job = job();
        for (MeasuringList.Item item : MeasuringList.of(job.build().setOut(), stage).items()) {
          for (int again = random.nextInt(8) == 0 ? 2 : 1; again > 0; again--) {
            double value = item.expectedSi().orElse(0) + slip(random, item.target().quantity());
            if (random.nextInt(10) > 0) {
              job.read(stage.id(), item.target().quantity(), item.target().text(), value);
            }
          }
        }
        if (!job.readings().isEmpty()) {
          StageFindings found = job.reduced(stage.id());
          suspected += found.notes().stream().anyMatch(SentenceNamesTest::isSlip) ? 1 : 0;
          assertInWords(found);
        }
      }
    }
    assertTrue(suspected > 20, suspected + " with slips");
  }

  private static boolean isSlip(Note note) {
    return note.kind() == Note.Kind.SLIP_SUSPECTED;
  }

  private static double slip(Random random, MeasuredQuantity quantity) {
    double small = 0.001 * random.nextGaussian();
    double large = quantity == DISTANCE ? 1 : 0.02;
    return switch (random.nextInt(30)) {
      case 0 -> large;
      case 1, 2 -> 0.008;
      default -> quantity == TILT ? small / 3 : small;
    };
  }

  /** What hangs loose, what nothing checks, what has no partner. */
  @Test
  void whatCannotBeFound() {
    assertInWords(
        job()
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18)
            .read("arrival", DISTANCE, "slab.A4-slab.B4", 9)
            .read("arrival", OFFSET, "slab.@(3;3)", 0.008)
            .read("arrival", STAFF, "slab.A1", 1.5)
            .reduced("arrival"));
    assertInWords(
        job()
            .read("lift", PLUMB_OFFSET, "eave.A2/across", 0.1)
            .read("lift", TILT, "column.A3/along", 1.5)
            .read("lift", DISTANCE, "base.A1-base.A2", 5.975)
            .read("lift", DISTANCE, "base.A3/low-base.A4/low", 5.975)
            .read("lift", DISTANCE, "base.A1-base.B3", 12)
            .reduced("lift"));
    assertInWords(
        job()
            .read("assembly", DISTANCE, "wall.A1/foot-wall.A4/foot", 18)
            .read("assembly", DISTANCE, "wall.A1/eave-wall.A4/eave", 18.01)
            .reduced("assembly"));
  }
}
