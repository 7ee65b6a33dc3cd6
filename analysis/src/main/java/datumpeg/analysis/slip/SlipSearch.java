package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.ChangeEffects;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.GlobalTest;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.stat.ChiSquared;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Looks for the slip that made a network fail its test, or for two if no single one explains it.
 * Criterion and order: see the description of this room. Closed forms look at every slip, and only
 * those that may explain the readings are adjusted again.
 */
public final class SlipSearch {
  /** At least so many are adjusted again, and at most. */
  private static final int FEWEST = 8;

  private static final int MOST = 32;

  /** How much worse than the best a slip may look beforehand: closed forms are nearly right. */
  private static final double WORTH_A_LOOK = 4 * Suspicion.ONE_MORE_QUANTITY;

  /** As many are told; more do not help to find the wrong reading. */
  private static final int TOLD = 12;

  private static final int TOLD_IN_PART = 3;

  /** With fewer degrees of freedom left, too many pairs fit by chance to name one. Our choice. */
  private static final int LEFT_TO_CHECK_TWO = 2;

  /** Further drop of v'Pv that the second slip must bring: 0.1 % point of chi-squared with one. */
  private static final double NEEDED = ChiSquared.quantile(0.999, 1);

  private final SlipNetwork network;
  private final SlipOptions options;
  private final GlobalTest test;
  private final ChangeEffects effects;
  private final SlipTrial trial;
  private final List<Slip> slips;

  private SlipSearch(
      SlipNetwork network,
      List<SlipReading> readings,
      SlipOptions options,
      GlobalTest test,
      Fit foresight) {
    this.network = network;
    this.options = options;
    this.test = test;
    this.effects = foresight.changeEffects().after(beyond(foresight, network.observations()));
    this.trial = new SlipTrial(network, test, effects, readings, options);
    this.slips = PossibleSlips.of(readings, options);
  }

  /**
   * Searches if the network fails its test.
   *
   * @param readings those in which a slip is looked for, each with an observation of its id
   */
  public static SlipFindings search(
      SlipNetwork network, List<SlipReading> readings, SlipOptions options) {
    requireKnown(network, readings);
    Optional<Fit> fit = network.fit(network.observations());
    Optional<Fit> foresight = network.foresight().or(() -> fit);
    Optional<GlobalTest> test = fit.isPresent() ? fit.flatMap(Fit::test) : bent(network, foresight);
    if (test.isEmpty() || foresight.isEmpty()) {
      return ended(SlipFindings.State.NOT_CHECKED, test);
    }
    if (test.get().agrees(options.suspectBelow())) {
      return ended(SlipFindings.State.AGREES, test);
    }
    return new SlipSearch(network, readings, options, test.get(), foresight.get()).found();
  }

  /** The test where a slip is so gross that no figure fits the readings at all. */
  private static Optional<GlobalTest> bent(SlipNetwork network, Optional<Fit> foresight) {
    return foresight
        .filter(fit -> fit.degreesOfFreedom() > 0)
        .map(
            fit ->
                new GlobalTest(
                    fit.changeEffects().squareSum(beyond(fit, network.observations())),
                    fit.degreesOfFreedom()));
  }

  private static void requireKnown(SlipNetwork network, List<SlipReading> readings) {
    Set<String> ids = new HashSet<>();
    network.observations().forEach(observation -> ids.add(observation.id()));
    for (SlipReading reading : readings) {
      if (!ids.contains(reading.id())) {
        throw new IllegalArgumentException(
            "slip search: reading "
                + reading.id()
                + " of "
                + reading.target().text()
                + " is no observation of the network");
      }
    }
  }

  private static SlipFindings ended(SlipFindings.State state, Optional<GlobalTest> test) {
    return new SlipFindings(state, test, List.of(), 0, Optional.empty(), 0);
  }

  /** What was observed, less what the foresight took for observed. */
  private static Map<String, Double> beyond(Fit foresight, List<Observation> observations) {
    Map<String, Double> beyond = new HashMap<>();
    for (Observation observation : observations) {
      beyond.put(
          observation.id(),
          observation.observed()
              - foresight.observation(observation.id()).observation().observed());
    }
    return beyond;
  }

  private record Foreseen(Slip slip, double score) {}

  private SlipFindings found() {
    List<Foreseen> foreseen = foreseen();
    List<Suspicion> significant = significant(foreseen);
    List<Suspicion> explaining = explaining(significant);
    if (explaining.isEmpty()) {
      explaining = explaining(needingBoth(significant(pairs(foreseen))));
    }
    return explaining.isEmpty() ? unexplained(foreseen, significant) : told(explaining);
  }

  /** Every slip that would show, the likelier first. */
  private List<Foreseen> foreseen() {
    List<Foreseen> foreseen = new ArrayList<>();
    for (Slip slip : slips) {
      double score = trial.foreseen(slip);
      if (Double.isFinite(score)) {
        foreseen.add(new Foreseen(slip, score));
      }
    }
    foreseen.sort(Comparator.comparingDouble(Foreseen::score));
    return foreseen;
  }

  /** Those worth adjusting again whose drop of v'Pv is more than chance. */
  private List<Suspicion> significant(List<Foreseen> foreseen) {
    List<Suspicion> significant = new ArrayList<>();
    for (Slip slip : worthAdjusting(foreseen)) {
      trial
          .of(slip)
          .filter(suspicion -> suspicion.chance() < options.suspectBelow())
          .ifPresent(significant::add);
    }
    return significant;
  }

  private static List<Slip> worthAdjusting(List<Foreseen> foreseen) {
    List<Slip> worth = new ArrayList<>();
    for (Foreseen one : foreseen) {
      boolean near = one.score() <= foreseen.get(0).score() + WORTH_A_LOOK;
      if (worth.size() < FEWEST || (near && worth.size() < MOST)) {
        worth.add(one.slip());
      }
    }
    return worth;
  }

  private List<Suspicion> explaining(List<Suspicion> significant) {
    return significant.stream().filter(s -> s.probability() >= options.explainFrom()).toList();
  }

  private List<Foreseen> pairs(List<Foreseen> foreseen) {
    int offsets = Math.min(2, test.degreesOfFreedom() - LEFT_TO_CHECK_TWO);
    return offsets < 0
        ? List.of()
        : new SlipPairs(effects, MOST)
            .best(foreseen.stream().map(Foreseen::slip).toList(), offsets).stream()
                .map(pair -> new Foreseen(pair.pair(), pair.score()))
                .toList();
  }

  /** Pairs of which neither slip explains as much without the other, beyond chance. */
  private List<Suspicion> needingBoth(List<Suspicion> pairs) {
    return pairs.stream()
        .filter(
            pair ->
                pair.slip().parts().stream()
                    .allMatch(part -> trial.foreseen(part) - pair.score() > NEEDED))
        .toList();
  }

  /** What explains a part; and where too little is left to check two slips, what to read next. */
  private SlipFindings unexplained(List<Foreseen> foreseen, List<Suspicion> significant) {
    List<Suspicion> part =
        significant.stream()
            .sorted(Comparator.comparingDouble(Suspicion::score))
            .limit(TOLD_IN_PART)
            .toList();
    return new SlipFindings(
        SlipFindings.State.NOT_EXPLAINED,
        Optional.of(test),
        part,
        0,
        test.degreesOfFreedom() < LEFT_TO_CHECK_TWO + 2
            ? next(twoOfAnySize(foreseen))
            : Optional.empty(),
        slips.size());
  }

  /** Two readings wrong by any amount each, as many pairs as are worth telling apart. */
  private List<Suspicion> twoOfAnySize(List<Foreseen> foreseen) {
    List<Slip> single =
        foreseen.stream()
            .map(Foreseen::slip)
            .filter(slip -> slip.hasUnknownOffset() && slip.readings().size() == 1)
            .toList();
    return new SlipPairs(effects, TOLD)
        .best(single, 2).stream().flatMap(pair -> trial.of(pair.pair()).stream()).toList();
  }

  private SlipFindings told(List<Suspicion> explaining) {
    Ranking ranking = Ranking.of(explaining);
    List<Suspicion> told = ranking.suspicions().stream().limit(TOLD).toList();
    int inseparable = Math.min(ranking.leading(), told.size());
    return new SlipFindings(
        SlipFindings.State.EXPLAINED,
        Optional.of(test),
        told,
        inseparable,
        next(told.subList(0, inseparable)),
        slips.size());
  }

  /** The reading that best tells suspects apart that lie in different readings. */
  private Optional<NextReading> next(List<Suspicion> suspects) {
    Set<String> readings = new HashSet<>();
    suspects.forEach(suspicion -> readings.addAll(suspicion.readingIds()));
    boolean apart = suspects.stream().map(s -> Set.copyOf(s.readingIds())).distinct().count() > 1;
    return apart
        ? network.further(readings).flatMap(further -> NextReading.among(suspects, further))
        : Optional.empty();
  }
}
