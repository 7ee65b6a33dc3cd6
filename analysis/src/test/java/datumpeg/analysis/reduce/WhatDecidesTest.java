package datumpeg.analysis.reduce;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.GuardBand;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import org.junit.jupiter.api.Test;

/** A clear span of 8572 mm, or a slab, read so that it is too close to call. */
class WhatDecidesTest {

  private static Outcome span(InventedJob job, double measuredMetres) {
    return job.read("lift", DISTANCE, "base.A2-base.B2", measuredMetres)
        .reduced("lift")
        .outcome("clear-span", "2/base")
        .orElseThrow();
  }

  @Test
  void scatterIsDecidedByRepeats() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0015, 0).limit("clear-span", 0.01);
    Outcome found = span(job, 8.580);
    assertEquals(Verdict.UNDECIDED, found.verdict().orElseThrow());
    assertTrue(found.remedy().startsWith("Read it once more."), found.remedy());
  }

  @Test
  void anErrorAllReadingsShareIsDecidedByAKnownDistance() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0003, 0.0015).limit("clear-span", 0.01);
    String remedy = span(job, 8.580).remedy();
    assertTrue(remedy.startsWith("Repeats will not decide it: the error all readings"), remedy);
    assertTrue(remedy.contains("Check that error on a known distance"), remedy);
  }

  @Test
  void anErrorOfTheLevelIsDecidedFromASecondSetUp() {
    InventedJob job = new InventedJob().meter("level", HEIGHT, 0.0001, 0);
    job.meters.put(
        "level",
        new datumpeg.analysis.measuring.Meter(
            "level",
            HEIGHT,
            new datumpeg.analysis.measuring.MeterAccuracy(0.0001, 0, 0.0002, 0),
            "job file"));
    job.limit("slab-level", 0.010)
        .read("arrival", HEIGHT, "slab.A1", 0.1)
        .read("arrival", HEIGHT, "slab.A4", 0.1)
        .read("arrival", HEIGHT, "slab.B4", 0.1085)
        .read("arrival", HEIGHT, "slab.B1", 0.1);
    String remedy = job.reduced("arrival").outcome("slab-level", "slab").orElseThrow().remedy();
    assertTrue(remedy.contains("Level it again from a second set-up"), remedy);
  }

  @Test
  void pointsThatAreIllDefinedAreToBeMarked() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0003, 0).limit("clear-span", 0.01);
    job.pointDefinitionsMetres.put("base", 0.005);
    String remedy = span(job, 8.5805).remedy();
    assertTrue(remedy.contains("Repeats will not decide it: "), remedy);
    assertTrue(remedy.contains("Mark each point once and read to the mark."), remedy);
  }

  @Test
  void severalThingsThatLimitTogetherAreSaidTogether() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0015, 0.0015).limit("clear-span", 0.01);
    job.pointDefinitionsMetres.put("base", 0.002);
    String remedy = span(job, 8.5815).remedy();
    assertTrue(remedy.contains("limit together"), remedy);
  }

  @Test
  void aJobMayDecideByGuardBands() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0015, 0).limit("clear-span", 0.01);
    job.decision = DecisionRule.DEFAULT.with(new GuardBand(GuardBand.ISO_14253_1, 1));
    assertEquals(Verdict.CONFORMING, span(job, 8.5788).verdict().orElseThrow(), "6.8 of 10, U = 3");
    InventedJob other =
        new InventedJob().meter("laser", DISTANCE, 0.0015, 0).limit("clear-span", 0.01);
    other.decision = job.decision;
    assertEquals(Verdict.UNDECIDED, span(other, 8.5846).verdict().orElseThrow(), "12.6, U = 3");
  }

  @Test
  void whereNothingCanBeAcceptedItIsSaid() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.003, 0).limit("clear-span", 0.005);
    job.decision = DecisionRule.DEFAULT.with(new GuardBand(GuardBand.ISO_14253_1, 1));
    Outcome found = span(job, 8.573);
    assertEquals(Verdict.UNDECIDED, found.verdict().orElseThrow());
    assertTrue(
        found.remedy().startsWith("U = 6.0 mm is too coarse for these limits: even a perfect"),
        found.remedy());
  }

  @Test
  void theWholeStageIsBounded() {
    InventedJob job =
        new InventedJob().meter("laser", DISTANCE, 0.0015, 0).limit("clear-span", 0.01);
    job.read("lift", DISTANCE, "base.A1-base.B1", 8.580);
    StageFindings found = job.read("lift", DISTANCE, "base.A2-base.B2", 8.580).reduced("lift");
    assertEquals(2 * 0.908789 - 1, found.joint().least(), 2e-6);
    assertEquals(0.908789, found.joint().most(), 1e-6);
    assertTrue(
        found.answer().sentence().endsWith(" That all conform is 81 to 90 % sure."),
        found.answer().sentence());
  }

  @Test
  void withoutLimitsThereIsNothingToBound() {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.0015, 0);
    StageFindings found = job.read("lift", DISTANCE, "base.A1-base.B1", 8.580).reduced("lift");
    assertEquals(0, found.joint().count());
    assertEquals(Answer.Kind.NOT_DECIDED, found.answer().kind());
  }
}
