package datumpeg.analysis.compare;

import datumpeg.analysis.trend.DatedOutcome;
import java.util.List;

/** What jobs are told apart by. */
public enum Factor {
  CREW("crew", "crews"),
  SITE("site", "sites"),
  SLAB_LAYER("slab layer", "slab layers"),
  METER("meter", "meters");

  private final String word;
  private final String plural;

  Factor(String word, String plural) {
    this.word = word;
    this.plural = plural;
  }

  public String word() {
    return word;
  }

  public String plural() {
    return plural;
  }

  /** The level or, of meters, levels an outcome belongs to; an empty text if nobody said. */
  public List<String> levels(DatedOutcome outcome) {
    return switch (this) {
      case CREW -> List.of(outcome.job().crew());
      case SITE -> List.of(outcome.job().site());
      case SLAB_LAYER -> List.of(outcome.job().slabBy());
      case METER -> outcome.meters();
    };
  }
}
