package datumpeg.desktop.text;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import java.util.Locale;

/** How an outcome stands, the gravest first. Each has its own word and its own shape on screen. */
public enum Standing {
  NONCONFORMING,
  UNDECIDED,
  /** Something it stands on was moved since; what was found no longer counts. */
  STALE,
  NOT_MEASURED,
  CONFORMING,
  /** A value for which the job gives no limit. */
  NO_LIMIT;

  public static Standing of(Outcome outcome) {
    if (outcome.stale()) {
      return STALE;
    }
    return outcome.verdict().map(Standing::of).orElse(NO_LIMIT);
  }

  public static Standing of(Verdict verdict) {
    return switch (verdict) {
      case CONFORMING -> CONFORMING;
      case UNDECIDED -> UNDECIDED;
      case NONCONFORMING -> NONCONFORMING;
    };
  }

  /** The key of its word in the resource bundle. */
  String key() {
    return "standing." + styleClass();
  }

  /** How a style sheet calls it. */
  public String styleClass() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
