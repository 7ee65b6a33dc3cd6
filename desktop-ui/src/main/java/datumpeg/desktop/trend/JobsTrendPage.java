package datumpeg.desktop.trend;

import datumpeg.desktop.chart.ChartLabels;
import datumpeg.desktop.chart.ChartPoints;
import datumpeg.desktop.control.Choice;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that the screen shows over jobs.
 *
 * @param choices by matter
 * @param chosen by matter, an id among its choices
 * @param points none where there is nothing to draw
 * @param sentences what the drawing says, or why there is none
 * @param signals runs that speak against chance, a sentence each, the newest first, as many as can
 *     be read
 * @param spoken the drawing in words
 * @param csv the numbers, as a table for other programs
 */
record JobsTrendPage(
    Map<TrendMatter, List<Choice>> choices,
    Map<TrendMatter, String> chosen,
    Optional<LocalDate> from,
    Optional<LocalDate> to,
    ChartPoints points,
    ChartLabels labels,
    List<String> sentences,
    List<String> signals,
    String spoken,
    TableText csv) {

  /** Made only when it is wanted: of a hundred thousand points it is some megabytes. */
  @FunctionalInterface
  interface TableText {
    String text();
  }

  JobsTrendPage {
    choices = Map.copyOf(choices);
    chosen = Map.copyOf(chosen);
    sentences = List.copyOf(sentences);
    signals = List.copyOf(signals);
  }
}
