package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Guide;
import java.util.List;
import java.util.OptionalInt;

/**
 * What somebody wants to measure, and with what.
 *
 * @param job its id
 * @param watched the one target to be shown live; empty for all of the stage, one by one
 * @param order in which targets are asked for; of no meaning for a watched target
 * @param round of the readings; empty where it follows from what was moved
 * @param operator who measures; may be empty
 * @param links of the meters; a keyboard is always one more
 * @param from the name of the target to begin at, or behind it where it is answered; empty for the
 *     first
 */
public record SessionWish(
    String job,
    String stage,
    String watched,
    Guide.Order order,
    OptionalInt round,
    String operator,
    List<LinkWish> links,
    String from) {
  public SessionWish {
    links = List.copyOf(links);
  }

  /** A session that begins at the first target. */
  public SessionWish(
      String job,
      String stage,
      String watched,
      Guide.Order order,
      OptionalInt round,
      String operator,
      List<LinkWish> links) {
    this(job, stage, watched, order, round, operator, links, "");
  }

  /**
   * A meter's link.
   *
   * @param address such as {@code serial:/dev/ttyUSB0}
   * @param profile how the meter speaks, by the id of its profile
   */
  public record LinkWish(String address, String profile) {}

  boolean isWatch() {
    return !watched.isEmpty();
  }
}
