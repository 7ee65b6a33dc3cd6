package datumpeg.bridge.jobfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.GuardBand;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.failure.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobFileTest {
  private final Job job = JobFile.read(JobTexts.LARKRISE, "shed.toml");

  @Test
  void identityIsReadWhole() {
    assertEquals("larkrise-01", job.identity().id());
    assertEquals("Stonecroft", job.identity().slabBy());
    assertEquals(Optional.of(LocalDate.of(2026, 3, 2)), job.identity().started());
    assertEquals(Math.toRadians(35), job.identity().bearingRadians().orElseThrow(), 1e-15);
    assertEquals(OptionalInt.of(1), job.identity().erectedFrom());
  }

  @Test
  void dimensionsFollowFromTheBuilding() {
    assertEquals(4, job.setOut().building().portalFrameCount());
    assertEquals(8.572, job.setOut().clearSpanMetres(), 1e-12);
    assertEquals(3.6, job.setOut().building().columnHeightMetres());
    assertEquals(2.88, job.setOut().openings().get(0).widthMetres());
  }

  @Test
  void slabKeepsItsCornersInOrderAndItsPlatesAscending() {
    Slab slab = job.setOut().slab();
    assertEquals(List.of("A1", "A4", "B4", "B1"), slab.cornerNames());
    assertEquals(5, slab.levelPoints().size());
    assertEquals(List.of(0.001, 0.002, 0.003, 0.005, 0.01), slab.platesMetres());
  }

  @Test
  void withoutASlabTableTheSlabIsTheRectangleOfSpanAndLength() {
    String text = JobTexts.LARKRISE.replaceAll("(?s)\\[slab\\].*?\\n\\n", "");
    Slab slab = JobFile.read(text, "shed.toml").setOut().slab();
    assertEquals(
        Map.of(
            "A1", new PlanPoint(0, 0),
            "A4", new PlanPoint(18, 0),
            "B4", new PlanPoint(18, 9),
            "B1", new PlanPoint(0, 9)),
        slab.corners());
    assertTrue(slab.levelPoints().isEmpty());
  }

  @Test
  void propsMaySayHowTheyStand() {
    String text =
        JobTexts.larkriseWith(
            "[decision]", "[props]\nattachment = \"2.8 m\"\nangle = \"50 deg\"\n[decision]");
    PropGeometry props = JobFile.read(text, "shed.toml").props().orElseThrow();
    assertEquals(2.8, props.attachmentMetres(), 1e-12);
    assertEquals(50, StrictMath.toDegrees(props.angleRadians()), 1e-9);
    assertTrue(job.props().isEmpty());
  }

  @Test
  void decisionMayBeByGuardBands() {
    String text =
        JobTexts.larkriseWith(
            "reject = 0.05", "reject = 0.05\nguard = \"ISO 14253-1\"\nguard_factor = 0.83");
    assertEquals(
        DecisionRule.DEFAULT.with(new GuardBand("ISO 14253-1", 0.83)),
        JobFile.read(text, "shed.toml").decision());
    assertTrue(job.decision().guard().isEmpty());
  }

  @Test
  void toleranceMayBeALengthLimitsARatioOrARowOfTheTable() {
    assertEquals(
        new Tolerance(new LimitRule.Constant(-0.01, 0.01), "job file"),
        job.tolerance("slab-size").orElseThrow());
    assertEquals(
        new LimitRule.Constant(-0.01, 0.005), job.tolerance("slab-level").orElseThrow().rule());
    assertEquals(
        new Tolerance(new LimitRule.Ratio(500, OptionalDouble.of(0.025)), "project specification"),
        job.tolerance("column-plumb").orElseThrow());
    Tolerance byRule = job.tolerance("portal-plumb").orElseThrow();
    assertEquals("project specification 3.2", byRule.source());
    assertEquals(0.012, byRule.rule().upperMetres(6), 1e-12);
    Tolerance row = job.tolerance("frame-spacing").orElseThrow();
    assertTrue(row.source().endsWith("verify against your copy"), row.source());
    assertEquals(0.0102, row.rule().upperMetres(6), 1e-12);
  }

  @Test
  void expandedUncertaintyAloneIsSplitInEqualVariances() {
    MeterAccuracy accuracy = job.meter("laser", MeasuredQuantity.DISTANCE).accuracy();
    assertEquals(0.00075 / Math.sqrt(2), accuracy.repeatability(), 1e-15);
    assertEquals(accuracy.repeatability(), accuracy.common());
    assertEquals(0.001, accuracy.resolution());
    assertEquals(0, accuracy.perMetre());
  }

  @Test
  void tiltMeterIsReadInAngles() {
    MeterAccuracy accuracy = job.meter("spirit", MeasuredQuantity.TILT).accuracy();
    assertEquals(Math.toRadians(0.05), accuracy.repeatability(), 1e-15);
    assertEquals(Math.toRadians(0.02), accuracy.common(), 1e-15);
  }

  @Test
  void repeatabilityLeavesTheRestOfAnExpandedUncertaintyAsCommon() {
    MeterAccuracy accuracy =
        meter(
            "expanded_uncertainty = \"2 mm\"\nrepeatability = \"0.6 mm\"\nper_metre = \"0.1 mm/m\"");
    assertEquals(0.0006, accuracy.repeatability());
    assertEquals(0.0008, accuracy.common(), 1e-15);
    assertEquals(0.0001, accuracy.perMetre(), 1e-15);
  }

  private static MeterAccuracy meter(String lines) {
    String text =
        JobTexts.larkriseWith(
            "expanded_uncertainty = \"1.5 mm\"\ncoverage = 2\nresolution = \"1 mm\"", lines);
    return JobFile.read(text, "shed.toml").meter("laser", MeasuredQuantity.DISTANCE).accuracy();
  }

  @Test
  void ownStageStandsAfterTheOneItNames() {
    assertEquals(
        List.of("arrival", "curing", "set-out"),
        job.stages().stream().map(Stage::id).limit(3).toList());
    Stage curing = job.stage("curing").orElseThrow();
    assertEquals(Map.of("edge-sound", "Is the edge sound?"), curing.questions());
    assertEquals(List.of("slab-level"), curing.checks());
    assertTrue(curing.holdPoint());
  }

  @Test
  void ownStagesMayFollowOneAnotherInWhateverOrderTheyStand() {
    String text =
        JobTexts.larkriseWith(
            "[stages.curing]\nafter = \"arrival\"",
            "[stages.sealing]\nafter = \"curing\"\n[stages.curing]\nafter = \"arrival\"");
    assertEquals(
        List.of("arrival", "curing", "sealing", "set-out"),
        JobFile.read(text, "shed.toml").stages().stream().map(Stage::id).limit(4).toList());
  }

  @Test
  void openingMayBeGivenByItsCurtain() {
    String text =
        JobTexts.larkriseWith(
            "opening_width = \"2.88 m\"", "curtain_width = \"3000 mm\"\ntrack_width = \"60 mm\"");
    assertEquals(
        2.88, JobFile.read(text, "shed.toml").setOut().openings().get(0).widthMetres(), 1e-12);
  }

  @Test
  void lengthsMayBeInFeetAndInches() {
    String text =
        JobTexts.larkriseWith("span = \"9 m\"", "span = \"29 ft 6 3/8 in\"")
            .replaceAll("(?s)\\[slab\\].*?\\n\\n", "");
    assertEquals(
        (29 * 12 + 6.375) * 0.0254,
        JobFile.read(text, "shed.toml").setOut().building().spanMetres(),
        1e-12);
  }

  @Test
  void pointsOfTheDefinitionTableAreFeatures() {
    assertEquals(0.001, job.pointDefinitionMetres(PointName.parse("slab.A1").orElseThrow()));
  }

  @Test
  void digestIsThatOfTheFilesBytes(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("shed.toml"), JobTexts.LARKRISE);
    JobFile read = JobFile.load(file, "shed.toml");
    assertEquals(JobTexts.LARKRISE, read.text());
    assertTrue(read.sha256().matches("[0-9a-f]{64}"));
    Files.writeString(file, JobTexts.LARKRISE + "\n");
    assertTrue(!JobFile.load(file, "shed.toml").sha256().equals(read.sha256()));
  }

  @Test
  void byteOrderMarkIsPartOfTheTextButNotOfTheFirstKey(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("shed.toml"), "\uFEFF" + JobTexts.LARKRISE);
    JobFile read = JobFile.load(file, "shed.toml");
    assertEquals("larkrise-01", read.job().identity().id());
    assertTrue(read.text().startsWith("\uFEFF"));
  }

  @Test
  void fileThatIsNotUtf8IsRefusedWithItsLine(@TempDir Path folder) throws IOException {
    Path file = Files.write(folder.resolve("shed.toml"), new byte[] {'a', '=', '1', '\n', -1});
    InputException failure =
        assertThrows(JobFileException.class, () -> JobFile.load(file, "shed.toml"));
    assertTrue(
        String.valueOf(failure.getMessage()).startsWith("shed.toml:2: The byte here is not UTF-8"),
        failure.getMessage());
  }

  @Test
  void missingFileIsBadInput(@TempDir Path folder) {
    InputException failure =
        assertThrows(
            InputException.class, () -> JobFile.load(folder.resolve("no.toml"), "no.toml"));
    assertEquals("There is no job file no.toml.", failure.getMessage());
  }
}
