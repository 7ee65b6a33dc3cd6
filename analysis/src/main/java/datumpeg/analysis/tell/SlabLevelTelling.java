package datumpeg.analysis.tell;

import datumpeg.analysis.check.slab.SlabFlatness;
import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Levels and flatness of the slab, and levels of the seats under the bases. */
final class SlabLevelTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(
        "slab-level", "Slab level",
        "slab-level-point", "Level against the mean",
        "seat-level", "Level under the bases",
        "slab-flatness", "Slab flatness");
  }

  @Override
  public String place(String check, String target) {
    return switch (check) {
      case "slab-level", "seat-level" -> "highest less lowest";
      case "slab-level-point" -> TargetWords.pointNamed(target);
      case "slab-flatness" ->
          target.equals("straightedge") ? "greatest gap under the straightedge" : target;
      default -> Places.level(Places.range(target));
    };
  }

  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return switch (outcome.check()) {
      case "slab-level", "slab-level-point" -> "slab level";
      default -> Telling.super.cause(outcome, all);
    };
  }

  @Override
  public boolean movesUnseen(Outcome outcome) {
    return true;
  }

  @Override
  public DecidedAs decidedAs(String check) {
    return switch (check) {
      case "slab-level", "seat-level" -> DecidedAs.SPREAD;
      case SlabFlatness.CHECK -> DecidedAs.MAXIMUM;
      default -> DecidedAs.VALUE;
    };
  }

  /** A floor's number is that of a sample of the floor. */
  @Override
  public Optional<String> whatWouldDecide(Outcome outcome, String chance) {
    return outcome.unit() == OutcomeUnit.F_NUMBER
        ? Optional.of(SlabFlatness.whatWouldDecide(chance))
        : Optional.empty();
  }

  @Override
  public String meterCheck(String check) {
    return check.equals(SlabFlatness.CHECK) ? Telling.super.meterCheck(check) : Moves.LEVEL_AGAIN;
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "slab-level" ->
          "the slab's levels spread over " + amount + " (" + outcome.aside() + ").";
      case "slab-level-point" ->
          TargetWords.pointNamed(target)
              + " lies "
              + amount
              + (plus ? " above" : " below")
              + " the slab's mean level.";
      case "seat-level" ->
          "the seats under the bases spread over " + amount + " (" + outcome.aside() + ").";
      case "slab-flatness" -> SlabFlatness.sentence(outcome);
      default -> throw Telling.notHere(outcome);
    };
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    return switch (outcome.check()) {
      case "seat-level" -> "Pack the bases to one level.";
      case SlabFlatness.CHECK -> SlabFlatness.remedy(outcome);
      default -> "Pack the bases to one level; ask the engineer where a point is beyond packing.";
    };
  }
}
