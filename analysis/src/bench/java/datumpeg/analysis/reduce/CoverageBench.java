package datumpeg.analysis.reduce;

import datumpeg.analysis.measuring.CheckNames;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import org.hipparchus.stat.descriptive.StreamingStatistics;

/**
 * Writes docs/benchmarks/coverage.md: does what the reduction says hold as often as it says?
 * Arguments: the file to write, the number of jobs, the first seed.
 */
public final class CoverageBench {
  private final List<String> lines = new ArrayList<>();

  private CoverageBench() {}

  public static void main(String[] arguments) throws IOException {
    List<String> given = List.of(arguments);
    int jobs = Integer.parseInt(given.get(1));
    long seed = Long.parseLong(given.get(2));
    CoverageBench bench = new CoverageBench();
    bench.write(CoverageStudy.of(jobs, seed), jobs, seed);
    Files.writeString(
        Path.of(given.get(0)), String.join("\n", bench.lines) + "\n", StandardCharsets.UTF_8);
  }

  private void write(CoverageStudy study, int jobs, long seed) {
    head(jobs, seed);
    signed(study);
    unsigned(study);
    verdicts(study);
    notStudied(study);
    agreement(study);
  }

  private void add(String format, Object... values) {
    lines.add(String.format(Locale.ROOT, format, values));
  }

  private void head(int jobs, long seed) {
    add("# Coverage: does what is said hold as often as it says?");
    add("");
    add("```");
    add(
        "mvn -q -Pbench -pl analysis -am test-compile dependency:build-classpath"
            + " -Dmdep.outputFile=target/bench.cp");
    add("java -Dbench.commit=$(git rev-parse --short HEAD) \\");
    add(
        "  -cp analysis/target/classes:analysis/target/test-classes:$(cat analysis/target/bench.cp)"
            + " \\");
    add(
        "  datumpeg.analysis.reduce.CoverageBench docs/benchmarks/coverage.md %d %d", jobs, seed);
    add("```");
    add("");
    add(
        "%,d simulated jobs, seeds from %d · commit %s · Java %s",
        jobs,
        seed,
        System.getProperty("bench.commit", "unknown"),
        System.getProperty("java.version"));
    add("");
    assumptions();
  }

  private void assumptions() {
    add(
        "Each job is an invented three-bay shed, every fourth on an L-shaped slab, measured whole in every stage and once more in a stage"
            + " that asks for every check. What is true, and what the reduction is not told:");
    add("");
    add(
        "- every point lies beside its place by a normal error of %.0f mm in x, y and level; every"
            + " column leans by a normal %.0f mm each way and is bowed by up to height/1000, evenly"
            + " distributed, each way;",
        1e3 * SimulatedSurvey.SHIFT_METRES,
        1e3 * SimulatedSurvey.LEAN_METRES);
    add(
        "- every meter has one zero and one scale for each session, every level's set-up a plane tilted"
            + " both ways; two sessions a stage, the second repeats levels and slab distances;");
    add(
        "- every point is marked once, a little beside where it is, and every reading of it in the job"
            + " is taken from the mark;");
    add(
        "- tilts are read %.1f m up, so that the bow is in them; side A on two faces, side B on one;",
        SimulatedSurvey.TILT_UP_METRES);
    add(
        "- the steel is as warm as drawn evenly from the 5 to 35 °C that the job allows; lengths of"
            + " steel are true at 20 °C;");
    add("- every reading is rounded to the meter's resolution.");
    add("");
    add(
        "The sizes of these errors are those the job states; the code that draws them is"
            + " `analysis/src/test/java/datumpeg/analysis/reduce/SimulatedSurvey.java`. Outcomes of one"
            + " job share errors; ± is one standard uncertainty, from the scatter of the jobs.");
    add("");
  }

  private void signed(CoverageStudy study) {
    add("## Signed quantities");
    add("");
    add(
        "Expected: the interval deviation ± U (coverage factor 2) holds the truth in 95 ± 2 %% of the"
            + " cases, without bias.");
    add("");
    add("| check | outcomes | covered, %% | mean U, mm | bias, mm |");
    add("|---|---|---|---|---|");
    study
        .tallies()
        .forEach(
            (check, tally) -> {
              if (tally.kind() == TrueValues.Kind.SIGNED) {
                add(
                    "| `%s` | %,d | %.1f ± %.1f | %.2f | %+.3f |",
                    check,
                    tally.outcomes(),
                    100 * tally.coverage(),
                    100 * tally.coverageUncertainty(),
                    1e3 * tally.meanExpandedUncertaintyMetres(),
                    1e3 * tally.biasMetres());
              }
            });
    add("");
  }

  private void unsigned(CoverageStudy study) {
    add("## Spreads, maxima and absolute differences");
    add("");
    add(
        "What is never negative is read too large by errors alone: the bias is found − true, and no"
            + " interval about the found value can be right for every truth. For a spread or a maximum the share"
            + " counted is how often it ± U holds the truth; for an absolute difference, how often the"
            + " signed difference ± U does.");
    add("");
    add("| check | kind | outcomes | covered, %% | mean U, mm | bias, mm |");
    add("|---|---|---|---|---|---|");
    study
        .tallies()
        .forEach(
            (check, tally) -> {
              if (tally.kind() != TrueValues.Kind.SIGNED) {
                add(
                    "| `%s` | %s | %,d | %.1f ± %.1f | %.2f | %+.3f |",
                    check,
                    tally.kind() == TrueValues.Kind.SPREAD ? "spread or maximum" : "absolute difference",
                    tally.outcomes(),
                    100 * tally.coverage(),
                    100 * tally.coverageUncertainty(),
                    1e3 * tally.meanExpandedUncertaintyMetres(),
                    1e3 * tally.biasMetres());
              }
            });
    add("");
  }

  private void verdicts(CoverageStudy study) {
    add("## Wrong verdicts");
    add("");
    add(
        "Decided at 95 and 5 %%. Expected: of the outcomes whose truth lies outside the limits, at most"
            + " 5 %% are accepted, and of those inside at most 5 %% are rejected, over the truths above"
            + " (the limits are ±%.0f mm, and %s).",
        1e3 * SimulatedSurvey.LIMIT_METRES,
        SimulatedSurvey.otherLimits());
    add("");
    add("| check | truth outside | of these accepted, %% | truth inside | of these rejected, %% |");
    add("|---|---|---|---|---|");
    study
        .tallies()
        .forEach(
            (check, tally) ->
                add(
                    "| `%s` | %,d | %.2f | %,d | %.2f |",
                    check,
                    tally.outside(),
                    100 * tally.falseAcceptance(),
                    tally.inside(),
                    100 * tally.falseRejection()));
    add("");
  }

  private void notStudied(CoverageStudy study) {
    TreeSet<String> silent = new TreeSet<>(CheckNames.ALL);
    silent.removeAll(study.tallies().keySet());
    silent.removeAll(study.withoutTruth());
    add("No truth simulated, though there were outcomes: %s.", listed(study.withoutTruth()));
    add("");
    add("No outcome, because the simulated survey reads nothing for it: %s.", listed(silent));
    add("");
  }

  private static String listed(Iterable<String> checks) {
    String list = "`" + String.join("`, `", checks) + "`";
    return list.equals("``") ? "none" : list;
  }

  private void agreement(CoverageStudy study) {
    add("## Readings that fit, and suspicions without a slip");
    add("");
    add(
        "No reading of the study has a slip. A network's variance factor is expected to be 1 in the"
            + " mean, its test to fail in 5 %% of the cases.");
    add("");
    add("| stage, network | adjustments | mean variance factor | failed at 5 %%, %% |");
    add("|---|---|---|---|");
    for (Map.Entry<String, StreamingStatistics> entry : study.varianceFactors().entrySet()) {
      StreamingStatistics failed =
          study.rejectedNetworks().getOrDefault(entry.getKey(), new StreamingStatistics());
      add(
          "| %s | %,d | %.3f | %.1f |",
          entry.getKey(), entry.getValue().getN(), entry.getValue().getMean(), 100 * failed.getMean());
    }
    add("");
    add(
        "Each stage is tested in many places; 5 %% are shared among the tests of a stage, so that a sound"
            + " stage is expected to be doubted anywhere in 5 %% of the jobs at most.");
    add("");
    add("| stage | jobs | a slip suspected, 5 %% shared among the tests of a stage, %% of jobs |");
    add("|---|---|---|");
    study
        .suspicions()
        .forEach(
            (stage, counted) ->
                add("| %s | %,d | %.1f |", stage, counted.getN(), 100 * counted.getMean()));
  }
}
