package datumpeg.desktop.chart;

import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;

/**
 * A row of points with the lines that belong to them. Kept as bare numbers, so that a hundred
 * thousand take a few megabytes and no node each.
 *
 * <p>Immutable. Not a number stands for a line that is not there.
 */
public final class ChartPoints {
  private static final double ROOM = 0.08;

  private final double[] values;
  private final double[] bars;
  private final double[] permittedLower;
  private final double[] permittedUpper;
  private final double[] controlLower;
  private final double[] controlUpper;
  private final Mark[] marks;
  private final double centre;
  private final double lowest;
  private final double highest;

  private ChartPoints(Builder builder) {
    int size = builder.size;
    values = numbers(size, builder.value);
    bars = numbers(size, builder.bar);
    permittedLower = numbers(size, builder.permittedLower);
    permittedUpper = numbers(size, builder.permittedUpper);
    controlLower = numbers(size, builder.controlLower);
    controlUpper = numbers(size, builder.controlUpper);
    centre = builder.centre;
    marks = new Mark[size];
    double low = Double.isNaN(centre) ? Double.POSITIVE_INFINITY : centre;
    double high = Double.isNaN(centre) ? Double.NEGATIVE_INFINITY : centre;
    for (int i = 0; i < size; i++) {
      marks[i] = builder.mark.apply(i);
      low = least(least(low, values[i] - bars[i]), least(permittedLower[i], controlLower[i]));
      high =
          -least(least(-high, -values[i] - bars[i]), least(-permittedUpper[i], -controlUpper[i]));
    }
    double room = Math.max(1e-6, (high - low) * ROOM);
    lowest = size == 0 ? -1 : low - room;
    highest = size == 0 ? 1 : high + room;
  }

  private static double[] numbers(int size, IntToDoubleFunction of) {
    double[] numbers = new double[size];
    for (int i = 0; i < size; i++) {
      numbers[i] = of.applyAsDouble(i);
    }
    return numbers;
  }

  /** The lesser of two, or the one that is a number. */
  private static double least(double one, double other) {
    return Double.isNaN(one) ? other : Double.isNaN(other) ? one : Math.min(one, other);
  }

  public int size() {
    return values.length;
  }

  public double value(int index) {
    return values[index];
  }

  /** Half the length of its uncertainty bar; 0 for none. */
  public double bar(int index) {
    return bars[index];
  }

  public double permittedLower(int index) {
    return permittedLower[index];
  }

  public double permittedUpper(int index) {
    return permittedUpper[index];
  }

  public double controlLower(int index) {
    return controlLower[index];
  }

  public double controlUpper(int index) {
    return controlUpper[index];
  }

  public Mark mark(int index) {
    return marks[index];
  }

  public double centre() {
    return centre;
  }

  /** The lower end of an axis that has room for everything. */
  public double lowest() {
    return lowest;
  }

  public double highest() {
    return highest;
  }

  /** Points without lines, bars or marks until these are given. */
  public static Builder of(int size, IntToDoubleFunction value) {
    return new Builder(size, value);
  }

  /** Puts points together. One thread. */
  public static final class Builder {
    private final int size;
    private final IntToDoubleFunction value;
    private IntToDoubleFunction bar = index -> 0;
    private IntToDoubleFunction permittedLower = index -> Double.NaN;
    private IntToDoubleFunction permittedUpper = index -> Double.NaN;
    private IntToDoubleFunction controlLower = index -> Double.NaN;
    private IntToDoubleFunction controlUpper = index -> Double.NaN;
    private IntFunction<Mark> mark = index -> Mark.PLAIN;
    private double centre = Double.NaN;

    private Builder(int size, IntToDoubleFunction value) {
      this.size = size;
      this.value = value;
    }

    public Builder bars(IntToDoubleFunction half) {
      bar = half;
      return this;
    }

    public Builder permitted(IntToDoubleFunction lower, IntToDoubleFunction upper) {
      permittedLower = lower;
      permittedUpper = upper;
      return this;
    }

    public Builder control(
        double centreLine, IntToDoubleFunction lower, IntToDoubleFunction upper) {
      centre = centreLine;
      controlLower = lower;
      controlUpper = upper;
      return this;
    }

    public Builder marks(IntFunction<Mark> marks) {
      mark = marks;
      return this;
    }

    public ChartPoints build() {
      return new ChartPoints(this);
    }
  }
}
