package datumpeg.analysis.reduce;

import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Decision;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.tell.Situation;
import datumpeg.analysis.tell.Tellings;
import java.util.Optional;

/** Puts to each outcome what to do about it at its stage. */
final class Remedies {
  /** No meter on a site gets an expanded uncertainty below this (common practice, no source). */
  private static final double LEAST_VISIBLE_METRES = 0.0002;

  /** More repeats than this nobody takes (common practice, no source). */
  private static final int MOST_REPEATS = 10;

  private final Decision decision;
  private final Situation situation;

  Remedies(Movability movability, Job job) {
    this.decision = new Decision(job.decision());
    this.situation = new Situation(job.setOut(), job.props(), movability);
  }

  /** What its moves depend on. */
  Situation situation() {
    return situation;
  }

  /**
   * The outcome with its remedy; one that already has it, or needs none, is left as it is.
   *
   * @param first what to do before it, where readings behind it contradict each other
   */
  Outcome apply(Outcome outcome, Optional<String> first) {
    if (outcome.stale()) {
      return outcome.withRemedy("Something was moved since: measure it again.");
    }
    if (first.isPresent() && outcome.is(Verdict.UNDECIDED)) {
      return outcome.withRemedy(first.get());
    }
    Outcome remedied = remedied(outcome);
    return remedied.withRemedy(after(first, remedied.remedy()));
  }

  /** A move with what has to be found out before it; nothing is moved for a reading in doubt. */
  static String after(Optional<String> first, String move) {
    return move.isEmpty() || first.isEmpty() || move.startsWith(first.get())
        ? move
        : first.get() + " If it still is so then: " + move;
  }

  private Outcome remedied(Outcome outcome) {
    if (!outcome.remedy().isEmpty()) {
      return outcome;
    }
    if (outcome.is(Verdict.UNDECIDED)) {
      return outcome.withRemedy(whatWouldDecide(outcome));
    }
    return outcome.is(Verdict.NONCONFORMING)
        ? outcome.withRemedy(Tellings.remedy(outcome, situation))
        : outcome;
  }

  /**
   * What would decide a value like this one: so many readings where scatter limits; a check of the
   * meter, marked points or another meter where what repeats cannot shrink does.
   */
  private String whatWouldDecide(Outcome outcome) {
    String chance =
        " (now "
            + LengthDisplay.decimal(outcome.probability().orElse(0) * 100, 0)
            + " % sure that it conforms)";
    return Tellings.whatWouldDecide(outcome, chance)
        .orElseGet(() -> byUncertainty(outcome, chance));
  }

  private String byUncertainty(Outcome outcome, String chance) {
    DecidedAs as = Tellings.decidedAs(outcome.check());
    double needed = decision.needed(outcome, as);
    double has = outcome.standardUncertainty();
    double coverage = outcome.coverage();
    String nothing = decision.canAccept(outcome, as) ? "" : nothingCanBeAccepted(outcome);
    if (needed * coverage < LEAST_VISIBLE_METRES) {
      return nothing
          + "It sits on its limit"
          + chance
          + ": no measuring will tell. Ask who set the limit, or"
          + " bring it nearer to the plan.";
    }
    return nothing
        + advice(outcome, needed)
        + " To tell, U must come down from "
        + Millimetres.of(has * coverage)
        + " to "
        + Millimetres.of(needed * coverage)
        + chance
        + ".";
  }

  private String advice(Outcome outcome, double needed) {
    double has = outcome.standardUncertainty();
    double ofRepeats = Improvement.REPEATS.leaves(outcome);
    double readings =
        (has * has - ofRepeats * ofRepeats) / (needed * needed - ofRepeats * ofRepeats);
    if (ofRepeats < needed && readings <= MOST_REPEATS) {
      int more = Math.max(1, (int) Math.ceil(readings) - 1);
      return "Read it " + (more == 1 ? "once more." : more + " times more.");
    }
    String lead =
        ofRepeats >= needed
            ? "Repeats will not decide it: "
            : "It would need more than " + MOST_REPEATS + " readings: ";
    if (Improvement.TEMPERATURE_READ.leaves(outcome) < needed) {
      return lead
          + "the temperature of the steel limits. Read it on the steel, and put it in the job file"
          + " as steel_temperature of the stage.";
    }
    if (Improvement.METER_CHECKED.leaves(outcome) < needed) {
      return lead
          + "the error all readings of the meter share limits. "
          + Tellings.meterCheck(outcome.check());
    }
    if (Improvement.POINTS_MARKED.leaves(outcome) < needed) {
      return lead
          + "how well the points themselves are defined limits. Mark each point once and read to"
          + " the mark.";
    }
    if (Improvement.OTHER_METER.leaves(outcome) < needed) {
      return lead + "the meter limits. Take a better meter.";
    }
    return lead
        + "the meter and the definition of the points limit together. Take a better meter and mark"
        + " the points.";
  }

  private static String nothingCanBeAccepted(Outcome outcome) {
    return "U = "
        + Millimetres.of(outcome.expandedUncertainty())
        + " is too coarse for these limits: even a perfect value could not be found conforming. ";
  }
}
