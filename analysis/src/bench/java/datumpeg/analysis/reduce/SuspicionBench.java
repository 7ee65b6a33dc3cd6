package datumpeg.analysis.reduce;

import java.util.List;
import java.util.Locale;

/**
 * How often a slip is suspected in a sound stage, and in one with one wrong distance. Prints
 * Markdown. Argument: stages a figure (default 500).
 */
public final class SuspicionBench {
  private static final List<Double> SLIPS_METRES = List.of(0.005, 0.01, 0.02, 0.1, 1.0);

  private SuspicionBench() {}

  public static void main(String[] arguments) {
    int stages = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 500;
    System.out.printf(
        "| stage (%d each) | sound | 5 mm | 10 mm | 20 mm | 100 mm | 1 m |%n"
            + "|---|---|---|---|---|---|---|%n",
        stages);
    for (String stage : List.of("arrival", "assembly", "lift", "tightening", "survey")) {
      SuspicionStudy study = new SuspicionStudy(stage);
      StringBuilder row = new StringBuilder("| " + stage + " | " + share(study, stages, 0));
      for (double slip : SLIPS_METRES) {
        row.append(" | ").append(share(study, stages, slip));
      }
      System.out.println(row + " |");
    }
  }

  private static String share(SuspicionStudy study, int stages, double slipMetres) {
    return String.format(
        Locale.ROOT, "%.1f %%", 100.0 * study.suspected(stages, slipMetres) / stages);
  }
}
