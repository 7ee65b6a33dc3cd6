package datumpeg.analysis.tell;

import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The words of all checks. A check that no family lists is told by its name. Immutable. */
public final class Tellings {
  private static final List<Telling> FAMILIES =
      List.of(
          new SlabShapeTelling(),
          new SlabLevelTelling(),
          new LayingTelling(),
          new StraightnessTelling(),
          new FrameTelling(),
          new EnclosureTelling(),
          new OpeningTelling());

  private static final Map<String, Telling> BY_CHECK = byCheck();

  private Tellings() {}

  private static Map<String, Telling> byCheck() {
    Map<String, Telling> byCheck = new LinkedHashMap<>();
    for (Telling family : FAMILIES) {
      for (String check : family.titles().keySet()) {
        if (byCheck.put(check, family) != null) {
          throw new IllegalStateException(check + " is told by two families of checks");
        }
      }
    }
    return byCheck;
  }

  private static Telling family(String check) {
    return BY_CHECK.getOrDefault(check, new Unlisted());
  }

  /** The checks that have words. */
  public static Set<String> checks() {
    return Set.copyOf(BY_CHECK.keySet());
  }

  /** What is checked, in the words of the trade. */
  public static String title(String check) {
    return family(check).titles().getOrDefault(check, check.replace('-', ' '));
  }

  /** What it was checked of: "corner A1", "column A3, across", "A1 to A2 at the base". */
  public static String place(String check, String target) {
    return family(check).place(check, target);
  }

  /** Check and place in one phrase, within a sentence: "column plumb, A3, across". */
  public static String name(Outcome outcome) {
    String title = title(outcome.check());
    return Character.toLowerCase(title.charAt(0))
        + title.substring(1)
        + ", "
        + place(outcome.check(), outcome.target());
  }

  /** What is behind an outcome: the slab's shape, one column, one row of frames, … */
  public static String cause(Outcome outcome, List<Outcome> all) {
    return family(outcome.check()).cause(outcome, all);
  }

  /** What is wrong, as the rest of a sentence. */
  public static String sentence(Outcome outcome, List<Outcome> all) {
    return family(outcome.check()).sentence(outcome, all);
  }

  /** As {@link #sentence(Outcome, List)}, without millimetres where none can be meant. */
  public static String sentence(Outcome outcome, List<Outcome> all, Situation situation) {
    return SteepLean.is(outcome, situation) ? SteepLean.sentence(outcome) : sentence(outcome, all);
  }

  /** What to do; "leave it" where the move is smaller than what the meter can see. */
  public static String remedy(Outcome outcome, Situation situation) {
    if (SteepLean.is(outcome, situation)) {
      return Plumbing.NO_PROP;
    }
    boolean seen = Math.abs(outcome.deviation()) > outcome.expandedUncertainty();
    Telling family = family(outcome.check());
    return seen || family.movesUnseen(outcome)
        ? family.remedy(outcome, situation)
        : Moves.leaveIt(outcome);
  }

  /** As what a check's number is decided. */
  public static DecidedAs decidedAs(String check) {
    return family(check).decidedAs(check);
  }

  /**
   * What would decide an outcome, where a check says it itself; else that follows from where its
   * uncertainty comes from.
   *
   * @param chance how sure it is now, in brackets
   */
  public static Optional<String> whatWouldDecide(Outcome outcome, String chance) {
    return family(outcome.check()).whatWouldDecide(outcome, chance);
  }

  /** How to lessen the error that all readings of a check's meter share. */
  public static String meterCheck(String check) {
    return family(check).meterCheck(check);
  }

  /** What to do about the worst outcome of a cause, knowing all outcomes. */
  public static String action(Outcome worst, List<Outcome> all, Situation situation) {
    return family(worst.check()).action(worst, all, situation);
  }

  /** A check that no family lists. */
  private static final class Unlisted implements Telling {
    @Override
    public Map<String, String> titles() {
      return Map.of();
    }

    @Override
    public String sentence(Outcome outcome, List<Outcome> all) {
      return outcome.check()
          + " "
          + outcome.target()
          + " is off by "
          + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty())
          + ".";
    }

    @Override
    public String remedy(Outcome outcome, Situation situation) {
      return "Ask the engineer.";
    }
  }
}
