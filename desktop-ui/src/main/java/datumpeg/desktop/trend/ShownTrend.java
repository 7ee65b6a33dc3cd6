package datumpeg.desktop.trend;

import datumpeg.desktop.chart.LookedInto;
import datumpeg.desktop.control.ExportButtons;
import java.util.function.Supplier;

/**
 * A trend to be taken elsewhere.
 *
 * @param node the chart, of which as much is taken as is in view
 * @param table asked when a button is pressed; what it gives makes the numbers
 */
record ShownTrend(LookedInto node, Supplier<Supplier<String>> table)
    implements ExportButtons.Shown {
  @Override
  public String name() {
    return "trend";
  }

  @Override
  public String svg() {
    return node.svg();
  }

  @Override
  public Supplier<String> csv() {
    return table.get();
  }
}
