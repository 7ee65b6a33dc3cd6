package datumpeg.analysis.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;

class NormalDrawsTest {

  /** The first output of S. Vigna's splitmix64.c (2015) for the state 0, a value from memory. */
  @Test
  void theUniformSourceIsTheSplitMixGenerator() {
    assertEquals(0xE220A8397B1DCDAFL, new SplittableRandom(0).nextLong());
  }

  /** Two routes: Box and Muller's equation (1) written out on the same uniform numbers. */
  @Test
  void aPairOfDrawsFollowsBoxAndMuller() {
    SplittableRandom random = new SplittableRandom(42);
    double first = ((random.nextLong() >>> 11) + 1) / 9007199254740992.0;
    double other = ((random.nextLong() >>> 11) + 1) / 9007199254740992.0;
    NormalDraws draws = new NormalDraws(42);
    double radius = Math.sqrt(-2 * StrictMath.log(first));
    assertEquals(radius * StrictMath.cos(2 * StrictMath.PI * other), draws.next());
    assertEquals(radius * StrictMath.sin(2 * StrictMath.PI * other), draws.next());
  }

  @Test
  void theSameSeedGivesTheSameDrawsAndAnotherSeedOthers() {
    double[] ones = take(new NormalDraws(7), 100);
    assertEquals(DoubleStream.of(ones).boxed().toList(), list(new NormalDraws(7)));
    assertTrue(ones[0] != new NormalDraws(8).next());
  }

  private static java.util.List<Double> list(NormalDraws draws) {
    return DoubleStream.of(take(draws, 100)).boxed().toList();
  }

  /** Hipparchus as the second route to the normal distribution; fixed seed, so no false alarm. */
  @Test
  void tenThousandDrawsAreStandardNormalByKolmogorovAndSmirnov() {
    double p =
        new KolmogorovSmirnovTest()
            .kolmogorovSmirnovTest(new NormalDistribution(0, 1), take(new NormalDraws(1), 10_000));
    assertTrue(p > 0.01, "p = " + p);
  }

  @Test
  void splitDrawsDoNotDependOnHowManyWereTaken() {
    NormalDraws few = new NormalDraws(3);
    NormalDraws many = new NormalDraws(3);
    NormalDraws fromFew = few.split();
    NormalDraws fromMany = many.split();
    take(many, 10);
    assertEquals(fromFew.next(), fromMany.next());
  }

  @Test
  void noSpreadStillUsesUpADraw() {
    NormalDraws with = new NormalDraws(5);
    NormalDraws without = new NormalDraws(5);
    assertEquals(0, Math.abs(with.next(0)));
    without.next();
    assertEquals(without.next(), with.next());
  }

  private static double[] take(NormalDraws draws, int count) {
    return DoubleStream.generate(draws::next).limit(count).toArray();
  }
}
