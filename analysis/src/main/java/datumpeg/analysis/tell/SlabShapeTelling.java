package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.remedy.Millimetres;
import java.util.List;
import java.util.Map;

/** Size, diagonals and squareness of the slab. */
final class SlabShapeTelling implements Telling {
  @Override
  public Map<String, String> titles() {
    return Titles.of(
        "slab-size", "Slab side",
        "slab-diagonals", "Slab diagonals",
        "slab-square", "Slab squareness");
  }

  @Override
  public String place(String check, String target) {
    return switch (check) {
      case "slab-square" -> "corner " + target;
      case "slab-diagonals" -> "difference of the two";
      default -> Places.range(target);
    };
  }

  @Override
  public String cause(Outcome outcome, List<Outcome> all) {
    return "slab shape";
  }

  @Override
  public boolean movesUnseen(Outcome outcome) {
    return true;
  }

  @Override
  public String sentence(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    String amount = Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    boolean plus = outcome.deviation() > 0;
    return switch (outcome.check()) {
      case "slab-square" ->
          "the slab is out of square: corner "
              + target
              + " is "
              + (plus ? "wider" : "narrower")
              + " than designed by "
              + amount
              + " over its shorter side"
              + diagonalsAgree(all)
              + ".";
      case "slab-diagonals" -> "the slab's diagonals differ by " + amount + ".";
      case "slab-size" ->
          "slab side " + target + " is " + amount + (plus ? " too long." : " too short.");
      default -> throw Telling.notHere(outcome);
    };
  }

  @Override
  public String remedy(Outcome outcome, Situation situation) {
    return "Concrete does not move: set the lines square by their own diagonals, not from this edge.";
  }

  private static String diagonalsAgree(List<Outcome> all) {
    return all.stream()
            .anyMatch(o -> o.check().equals("slab-diagonals") && o.is(Verdict.CONFORMING))
        ? ", though its diagonals agree"
        : "";
  }
}
