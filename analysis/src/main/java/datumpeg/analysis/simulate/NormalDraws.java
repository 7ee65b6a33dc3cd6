package datumpeg.analysis.simulate;

import java.util.SplittableRandom;

/**
 * Draws from the standard normal distribution, the same ones for the same seed on every JDK.
 *
 * <p>Uniform numbers are the upper 53 bits of {@link SplittableRandom#nextLong()} (the generator of
 * Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014), turned into
 * normal ones in pairs by Box and Muller, "A note on the generation of random normal deviates",
 * Annals of Mathematical Statistics 29, 1958, equation (1), with {@link StrictMath}.
 *
 * <p>One thread.
 */
public final class NormalDraws {
  private static final double UNIT = 0x1.0p-53;

  private final SplittableRandom random;
  private double second;
  private boolean secondWaits;

  public NormalDraws(long seed) {
    this(new SplittableRandom(seed));
  }

  private NormalDraws(SplittableRandom random) {
    this.random = random;
  }

  /** Further draws that do not depend on how many are taken from these. */
  public NormalDraws split() {
    return new NormalDraws(random.split());
  }

  /** The next draw, of mean 0 and standard deviation 1. */
  public double next() {
    if (secondWaits) {
      secondWaits = false;
      return second;
    }
    double radius = Math.sqrt(-2 * StrictMath.log(uniform()));
    double angle = 2 * StrictMath.PI * uniform();
    second = radius * StrictMath.sin(angle);
    secondWaits = true;
    return radius * StrictMath.cos(angle);
  }

  /**
   * The next draw, of mean 0.
   *
   * @param standardDeviation 0 or more; 0 gives 0 and still uses up a draw
   */
  public double next(double standardDeviation) {
    return standardDeviation * next();
  }

  /** More than 0 and at most 1, so that its logarithm is finite. */
  private double uniform() {
    return ((random.nextLong() >>> 11) + 1) * UNIT;
  }
}
