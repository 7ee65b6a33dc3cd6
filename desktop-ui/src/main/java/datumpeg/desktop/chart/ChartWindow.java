package datumpeg.desktop.chart;

/**
 * The part of a row of points that is in view, by place: point i stands at i, and has the place
 * from i − ½ to i + ½.
 *
 * @param from left edge
 * @param to right edge, more than {@code from}
 */
public record ChartWindow(double from, double to) {
  private static final double LEAST_POINTS = 4;

  /** All of so many points. */
  public static ChartWindow all(int size) {
    return new ChartWindow(-0.5, Math.max(1, size) - 0.5);
  }

  public double width() {
    return to - from;
  }

  /** Narrower for a factor above 1, the place staying where it is; never beyond the points. */
  public ChartWindow zoomed(double factor, double place, int size) {
    double all = Math.max(1, size);
    double wanted = Math.max(Math.min(LEAST_POINTS, all), Math.min(all, width() / factor));
    double share = (place - from) / width();
    return new ChartWindow(place - share * wanted, place + (1 - share) * wanted).within(size);
  }

  /** Further along by so many points; never beyond them. */
  public ChartWindow moved(double points, int size) {
    return new ChartWindow(from + points, to + points).within(size);
  }

  /** Moved as little as will bring a point into view. */
  public ChartWindow showing(int index, int size) {
    double less = Math.min(0, index - 0.5 - from);
    double more = Math.max(0, index + 0.5 - to);
    return moved(less + more, size);
  }

  private ChartWindow within(int size) {
    double last = Math.max(1, size) - 0.5;
    double shift = from < -0.5 ? -0.5 - from : to > last ? last - to : 0;
    return new ChartWindow(Math.max(-0.5, from + shift), Math.min(last, to + shift));
  }

  public int firstPoint() {
    return Math.max(0, (int) Math.ceil(from));
  }

  public int lastPoint(int size) {
    return Math.min(size - 1, (int) Math.floor(to));
  }
}
