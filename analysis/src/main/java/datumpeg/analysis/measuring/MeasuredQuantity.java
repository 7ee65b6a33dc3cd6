package datumpeg.analysis.measuring;

import datumpeg.analysis.quantity.Dimension;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a reading measures. */
public enum MeasuredQuantity {
  /** The straight distance between two points. */
  DISTANCE("distance", Dimension.LENGTH),
  /** Level above the set-up's plane, up positive. */
  HEIGHT("height", Dimension.LENGTH),
  /** A staff reading from the set-up's plane down to the point, down positive. */
  STAFF("staff", Dimension.LENGTH),
  /** Angle from vertical, positive with the top toward the higher frame number or toward B. */
  TILT("tilt", Dimension.ANGLE),
  /** From a plumb line to a point of a column; lean = eave − base. */
  PLUMB_OFFSET("plumb-offset", Dimension.LENGTH),
  /** From a string line, less its stand-off; positive = outward. */
  OFFSET("offset", Dimension.LENGTH),
  /** The answer to a stage's question: 1 for yes, 0 for no. */
  ATTRIBUTE("attribute", Dimension.LENGTH);

  private final String text;
  private final Dimension dimension;

  MeasuredQuantity(String text, Dimension dimension) {
    this.text = text;
    this.dimension = dimension;
  }

  /** How the quantity is written in tables and job files. */
  public String text() {
    return text;
  }

  /** Length or angle; an attribute has no dimension and is not asked. */
  public Dimension dimension() {
    return dimension;
  }

  public static Optional<MeasuredQuantity> ofText(String text) {
    return Arrays.stream(values()).filter(quantity -> quantity.text.equals(text)).findFirst();
  }

  /** All quantities as they are written, for messages. */
  public static List<String> texts() {
    return Arrays.stream(values()).map(MeasuredQuantity::text).toList();
  }
}
