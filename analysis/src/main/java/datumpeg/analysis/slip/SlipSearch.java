package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.ChangeEffects;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.GlobalTest;
import datumpeg.analysis.adjust.Observation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Looks for the slip that made a network fail its test. Criterion and order: see the description of
 * this room. Closed forms look at every slip, and only those that may explain the readings are
 * adjusted again.
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
    List<Suspicion> significant = new ArrayList<>();
    for (Slip slip : worthAdjusting()) {
      trial
          .of(slip)
          .filter(suspicion -> suspicion.chance() < options.suspectBelow())
          .ifPresent(significant::add);
    }
    List<Suspicion> explaining =
        significant.stream().filter(s -> s.probability() >= options.explainFrom()).toList();
    if (explaining.isEmpty()) {
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
          Optional.empty(),
          slips.size());
    }
    return told(explaining);
  }

  private SlipFindings told(List<Suspicion> explaining) {
    Ranking ranking = Ranking.of(explaining);
    List<Suspicion> told = ranking.suspicions().stream().limit(TOLD).toList();
    int inseparable = Math.min(ranking.leading(), told.size());
    List<Suspicion> leading = told.subList(0, inseparable);
    Set<String> suspects = new HashSet<>();
    leading.forEach(suspicion -> suspects.addAll(suspicion.readingIds()));
    boolean apart = leading.stream().map(Suspicion::readingIds).distinct().count() > 1;
    Optional<NextReading> next =
        apart
            ? network.further(suspects).flatMap(further -> NextReading.among(leading, further))
            : Optional.empty();
    return new SlipFindings(
        SlipFindings.State.EXPLAINED, Optional.of(test), told, inseparable, next, slips.size());
  }

  private List<Slip> worthAdjusting() {
    List<Foreseen> foreseen = new ArrayList<>();
    for (Slip slip : slips) {
      double score = trial.foreseen(slip);
      if (Double.isFinite(score)) {
        foreseen.add(new Foreseen(slip, score));
      }
    }
    foreseen.sort(Comparator.comparingDouble(Foreseen::score));
    List<Slip> worth = new ArrayList<>();
    for (Foreseen one : foreseen) {
      boolean near = one.score() <= foreseen.get(0).score() + WORTH_A_LOOK;
      if (worth.size() < FEWEST || (near && worth.size() < MOST)) {
        worth.add(one.slip());
      }
    }
    return worth;
  }
}
