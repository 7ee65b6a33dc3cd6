package datumpeg.desktop.trend;

import datumpeg.bridge.exchange.WrittenTable;
import datumpeg.desktop.text.Words;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The trend of one target as a table for other programs: one row a point, in the units that are
 * shown; numbers rounded half-even to 1e-6.
 */
final class TargetTable {
  private TargetTable() {}

  static String csv(TrendPage page, Words words) {
    WrittenTable table =
        new WrittenTable(
            List.of(
                "check",
                "target",
                "measured_at",
                "unit",
                "deviation",
                "expanded_uncertainty",
                "lower",
                "upper",
                "standing"));
    for (TrendPoint point : page.points()) {
      table.row(
          List.of(
              page.check(),
              page.target(),
              point.label(),
              page.unit(),
              number(OptionalDouble.of(point.deviation())),
              number(OptionalDouble.of(point.uncertainty())),
              number(point.lower()),
              number(point.upper()),
              words.standing(point.standing())));
    }
    return table.csv();
  }

  private static String number(OptionalDouble value) {
    return value.isEmpty()
        ? ""
        : BigDecimal.valueOf(value.getAsDouble())
            .setScale(6, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
  }
}
