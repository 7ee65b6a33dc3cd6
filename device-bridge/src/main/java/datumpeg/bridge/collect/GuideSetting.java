package datumpeg.bridge.collect;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.Supplier;

/**
 * How a session is guided.
 *
 * @param collector with the targets still to be measured
 * @param all that the stage asks for, measured or not: what can be gone to
 * @param round of the readings; empty where it follows from what was moved
 * @param further asked when the list is done: what would decide something, else nothing
 */
public record GuideSetting(
    Collector collector,
    HoldRule rule,
    Guide.Order order,
    List<Wanted> all,
    OptionalInt round,
    Supplier<List<Wanted>> further) {
  public GuideSetting {
    all = List.copyOf(all);
  }
}
