package datumpeg.desktop.chart;

import java.util.function.IntFunction;

/**
 * The words on and about a chart.
 *
 * @param unit behind the numbers of the axis
 * @param control names a control limit
 * @param centre names the centre line
 * @param permitted names a permitted deviation
 * @param place what stands under a point, such as its day
 * @param told a point in words
 */
public record ChartLabels(
    String unit,
    String control,
    String centre,
    String permitted,
    IntFunction<String> place,
    IntFunction<String> told) {}
