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
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * How a rule is written in TOML, one of: {@code limit} (the same both ways), {@code lower} or
 * {@code upper} or both, {@code ratio} with or without {@code cap}, {@code pieces}, {@code steps}
 * with {@code interpolate} and perhaps {@code round}, {@code formula}.
 */
public final class RuleText {
  private static final String KINDS =
      "A limit is either 'limit', or 'lower' or 'upper' or both, or 'ratio' with or without 'cap',"
          + " or 'pieces', or 'steps' with 'interpolate', or 'formula'.";

  private RuleText() {}

  /** The rule a table spells out; empty, and a mistake added, if it spells out none or several. */
  public static Optional<LimitRule> read(Table table) {
    Optional<Value> limit = table.find("limit");
    Optional<Value> lower = table.find("lower");
    Optional<Value> upper = table.find("upper");
    Optional<Value> ratio = table.find("ratio");
    Optional<Value> cap = table.find("cap");
    Optional<Value> pieces = table.find("pieces");
    Optional<Value> steps = table.find("steps");
    Optional<Value> interpolate = table.find("interpolate");
    Optional<Value> round = table.find("round");
    Optional<Value> formula = table.find("formula");
    long kinds =
        Stream.of(limit, lower.or(() -> upper), ratio, pieces, steps, formula)
            .filter(Optional::isPresent)
            .count();
    if (kinds != 1
        || (cap.isPresent() && ratio.isEmpty())
        || (steps.isPresent() != interpolate.isPresent())
        || (round.isPresent() && steps.isEmpty())) {
      table.mistake(KINDS);
      return Optional.empty();
    }
    if (limit.isPresent()) {
      return symmetric(limit.get());
    }
    if (lower.isPresent() || upper.isPresent()) {
      return between(lower, upper);
    }
    if (ratio.isPresent()) {
      return ratio(ratio.get(), cap);
    }
    if (formula.isPresent()) {
      return formula(formula.get());
    }
    return steps.isPresent() && interpolate.isPresent()
        ? steps(table, steps.get(), interpolate.get(), round)
        : pieces(table, pieces.orElseThrow());
  }

  /** The same limit both ways, from a text such as {@code "10 mm"}. */
  public static Optional<LimitRule> symmetric(Value value) {
    OptionalDouble metres = Quantities.length(value, Bound.POSITIVE);
    return metres.isPresent()
        ? Optional.of(new LimitRule.Constant(-metres.getAsDouble(), metres.getAsDouble()))
        : Optional.empty();
  }

  /** One limit each way; a side that is not named has none. */
  private static Optional<LimitRule> between(Optional<Value> lower, Optional<Value> upper) {
    OptionalDouble least = side(lower, Double.NEGATIVE_INFINITY);
    OptionalDouble greatest = side(upper, Double.POSITIVE_INFINITY);
    if (least.isEmpty() || greatest.isEmpty()) {
      return Optional.empty();
    }
    return made(
        lower.or(() -> upper).orElseThrow(),
        () -> new LimitRule.Constant(least.getAsDouble(), greatest.getAsDouble()));
  }

  private static OptionalDouble side(Optional<Value> value, double otherwise) {
    return value.isPresent()
        ? Quantities.length(value.get(), Bound.ANY)
        : OptionalDouble.of(otherwise);
  }

  /** What a constructor makes; if it refuses, its message becomes a mistake. */
  private static Optional<LimitRule> made(Value at, Supplier<LimitRule> rule) {
    try {
      return Optional.of(rule.get());
    } catch (IllegalArgumentException e) {
      at.mistake(String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }

  private static Optional<LimitRule> formula(Value value) {
    return value.text().flatMap(text -> made(value, () -> new LimitRule.Formula(text)));
  }

  private static Optional<LimitRule> steps(
      Table table, Value value, Value interpolate, Optional<Value> round) {
    int before = table.mistakes().count();
    List<LimitRule.Step> steps = new ArrayList<>();
    for (Value item : value.list().orElse(List.of())) {
      item.table().map(RuleText::step).ifPresent(steps::add);
    }
    String word = interpolate.text().orElse("");
    if (!word.equals("none") && !word.equals("linear")) {
      interpolate.mistake(
          "'" + interpolate.name() + "' is \"" + word + "\"; expected \"none\" or \"linear\".");
    }
    double rounded =
        round.isPresent() ? Quantities.length(round.get(), Bound.POSITIVE).orElse(0) : 0;
    return table.mistakes().count() > before
        ? Optional.empty()
        : made(
            value,
            () ->
                new LimitRule.Steps(
                    steps,
                    word.equals("linear")
                        ? LimitRule.Interpolation.LINEAR
                        : LimitRule.Interpolation.NONE,
                    rounded));
  }

  private static LimitRule.Step step(Table table) {
    double size = length(table, "up_to", Double.POSITIVE_INFINITY);
    Optional<Value> limit = table.require("limit");
    table.refuseOthers();
    return new LimitRule.Step(
        size, limit.isPresent() ? Quantities.length(limit.get(), Bound.POSITIVE).orElse(1) : 1);
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
    return table.mistakes().count() > before
        ? Optional.empty()
        : made(value, () -> new LimitRule.Pieces(pieces));
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
