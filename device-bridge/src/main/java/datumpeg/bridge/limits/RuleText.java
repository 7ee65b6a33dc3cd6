package datumpeg.bridge.limits;

import datumpeg.analysis.conform.LimitRule;
import datumpeg.bridge.toml.Bound;
import datumpeg.bridge.toml.Quantities;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * How a rule is written in TOML, one of: {@code limit} (the same both ways), {@code lower} and
 * {@code upper}, {@code ratio} with or without {@code cap}, {@code pieces}.
 */
public final class RuleText {
  private RuleText() {}

  /** The rule a table spells out; empty, and a mistake added, if it spells out none or several. */
  public static Optional<LimitRule> read(Table table) {
    Optional<Value> limit = table.find("limit");
    Optional<Value> lower = table.find("lower");
    Optional<Value> upper = table.find("upper");
    Optional<Value> ratio = table.find("ratio");
    Optional<Value> cap = table.find("cap");
    Optional<Value> pieces = table.find("pieces");
    boolean oneSide = lower.isPresent() != upper.isPresent();
    long kinds =
        Stream.of(limit, lower.or(() -> upper), ratio, pieces).filter(Optional::isPresent).count();
    if (kinds != 1 || oneSide || (cap.isPresent() && ratio.isEmpty())) {
      table.mistake(
          "A limit is either 'limit', or 'lower' with 'upper', or 'ratio' with or without 'cap',"
              + " or 'pieces'.");
      return Optional.empty();
    }
    if (limit.isPresent()) {
      return symmetric(limit.get());
    }
    if (lower.isPresent() && upper.isPresent()) {
      return between(lower.get(), upper.get());
    }
    return ratio.isPresent() ? ratio(ratio.get(), cap) : pieces(table, pieces.orElseThrow());
  }

  /** The same limit both ways, from a text such as {@code "10 mm"}. */
  public static Optional<LimitRule> symmetric(Value value) {
    OptionalDouble metres = Quantities.length(value, Bound.POSITIVE);
    return metres.isPresent()
        ? Optional.of(new LimitRule.Constant(-metres.getAsDouble(), metres.getAsDouble()))
        : Optional.empty();
  }

  private static Optional<LimitRule> between(Value lower, Value upper) {
    OptionalDouble least = Quantities.length(lower, Bound.ANY);
    OptionalDouble greatest = Quantities.length(upper, Bound.ANY);
    if (least.isEmpty() || greatest.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new LimitRule.Constant(least.getAsDouble(), greatest.getAsDouble()));
    } catch (IllegalArgumentException e) {
      lower.mistake(String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }

  private static Optional<LimitRule> ratio(Value ratio, Optional<Value> cap) {
    Optional<Double> divisor = ratio.number();
    if (divisor.isPresent() && !(divisor.get() > 0)) {
      ratio.mistake("'" + ratio.name() + "' is " + divisor.get() + "; expected more than 0.");
      return Optional.empty();
    }
    OptionalDouble most =
        cap.isPresent() ? Quantities.length(cap.get(), Bound.POSITIVE) : OptionalDouble.empty();
    if (divisor.isEmpty() || (cap.isPresent() && most.isEmpty())) {
      return Optional.empty();
    }
    return Optional.of(new LimitRule.Ratio(divisor.get(), most));
  }

  private static Optional<LimitRule> pieces(Table table, Value value) {
    int before = table.mistakes().count();
    List<LimitRule.Piece> pieces = new ArrayList<>();
    for (Value item : value.list().orElse(List.of())) {
      item.table().map(RuleText::piece).ifPresent(pieces::add);
    }
    if (table.mistakes().count() > before) {
      return Optional.empty();
    }
    try {
      return Optional.of(new LimitRule.Pieces(pieces));
    } catch (IllegalArgumentException e) {
      value.mistake(String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }

  private static LimitRule.Piece piece(Table table) {
    LimitRule.Piece piece =
        new LimitRule.Piece(
            length(table, "up_to", Double.POSITIVE_INFINITY),
            length(table, "constant", 0),
            length(table, "per_metre", 0));
    table.refuseOthers();
    return piece;
  }

  private static double length(Table table, String key, double otherwise) {
    Optional<Value> value = table.find(key);
    return value.isPresent()
        ? Quantities.length(value.get(), Bound.ANY).orElse(otherwise)
        : otherwise;
  }
}
