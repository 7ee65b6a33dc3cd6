package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Guide;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where the last session stood, so that another goes on there: after a cable was pulled, or the
 * window itself was killed. Immutable.
 *
 * @param target the name of the one asked for last; empty for none yet
 */
record LeftAt(
    String job, String stage, String watched, Guide.Order order, OptionalInt round, String target) {
  private static final String JOB = "measure.left.job";
  private static final String STAGE = "measure.left.stage";
  private static final String WATCHED = "measure.left.watched";
  private static final String ORDER = "measure.left.order";
  private static final String ROUND = "measure.left.round";
  private static final String TARGET = "measure.left.target";

  static LeftAt of(SessionWish wish) {
    return new LeftAt(
        wish.job(), wish.stage(), wish.watched(), wish.order(), wish.round(), wish.from());
  }

  LeftAt withTarget(String newTarget) {
    return new LeftAt(job, stage, watched, order, round, newTarget);
  }

  /** The session that goes on, with the same person and meters. */
  SessionWish wish(Remembered remembered) {
    return new SessionWish(
        job, stage, watched, order, round, remembered.operator(), remembered.links(), target);
  }

  Map<String, String> asTexts() {
    return Map.of(
        JOB, job,
        STAGE, stage,
        WATCHED, watched,
        ORDER, order.name(),
        ROUND, round.isPresent() ? Integer.toString(round.getAsInt()) : "",
        TARGET, target);
  }

  /** What was kept; empty if nothing was, or if somebody made it unreadable. */
  static Optional<LeftAt> of(Map<String, String> texts) {
    String job = texts.getOrDefault(JOB, "");
    String round = texts.getOrDefault(ROUND, "");
    Optional<Guide.Order> order =
        Arrays.stream(Guide.Order.values())
            .filter(each -> each.name().equals(texts.get(ORDER)))
            .findFirst();
    if (job.isEmpty() || order.isEmpty() || !round.matches("\\d{0,6}")) {
      return Optional.empty();
    }
    return Optional.of(
        new LeftAt(
            job,
            texts.getOrDefault(STAGE, ""),
            texts.getOrDefault(WATCHED, ""),
            order.get(),
            round.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(round)),
            texts.getOrDefault(TARGET, "")));
  }
}
