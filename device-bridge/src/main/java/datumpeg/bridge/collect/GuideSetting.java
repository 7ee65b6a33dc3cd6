package datumpeg.bridge.collect;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.Supplier;

/**
 * How a session is guided.
 *
 * @param collector with the targets still to be measured
 * @param round of the readings; empty where it follows from what was moved
 * @param further asked when the list is done: what would decide something, else nothing
 */
public record GuideSetting(
    Collector collector,
    HoldRule rule,
    Guide.Order order,
    OptionalInt round,
    Supplier<List<Wanted>> further) {}
