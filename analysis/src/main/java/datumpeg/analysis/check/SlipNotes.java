package datumpeg.analysis.check;

import datumpeg.analysis.adjust.AdjustedObservation;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.SuspectedSlip;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.slip.SlipFindings;
import datumpeg.analysis.slip.SlipKind;
import datumpeg.analysis.slip.SlipNetwork;
import datumpeg.analysis.slip.SlipOptions;
import datumpeg.analysis.slip.SlipReading;
import datumpeg.analysis.slip.SlipSearch;
import datumpeg.analysis.slip.Suspicion;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The words for readings that contradict each other. Nothing is dropped or corrected. */
public final class SlipNotes {
  /** So many slips are told in a note; more do not help to find the wrong reading. */
  private static final int TOLD = 2;

  private SlipNotes() {}

  /**
   * One value read several times, with results that cannot all be right.
   *
   * @param value what a reading says of it, whichever target, face or part it was read by
   */
  public static Note contradiction(List<Reading> readings, ToDoubleFunction<Reading> value) {
    double least = readings.stream().mapToDouble(value).min().orElse(0);
    double most = readings.stream().mapToDouble(value).max().orElse(0);
    boolean tilt = readings.get(0).target().quantity() == MeasuredQuantity.TILT;
    boolean faces = readings.stream().mapToInt(Reading::face).distinct().count() > 1;
    String spread = tilt ? degrees(most - least) : Millimetres.of(most - least);
    return new Note(
        Note.Kind.SLIP_SUSPECTED,
        "The readings of "
            + readings.stream()
                .map(reading -> TargetWords.of(reading.target()))
                .distinct()
                .collect(Collectors.joining(" and "))
            + " contradict each other by "
            + spread
            + (faces ? ", face 2 with its sign turned" : "")
            + ", more than their uncertainty explains. Read it again; void the wrong one.",
        readings.stream().map(Reading::id).sorted().toList());
  }

  /**
   * Whether the observations of a network fit together. If doubted: where the slip is, which slips
   * would explain it, best first, and what to read next. No test without redundancy.
   */
  public static Optional<AgreementTest> ofNetwork(
      String name, SlipNetwork network, Fit fit, List<Reading> readings, StageReadings stage) {
    return ofNetwork(name, network, fit, readings, stage, AgreementTest.Reach.ALL);
  }

  /** As above, with what a slip in it reaches. */
  public static Optional<AgreementTest> ofNetwork(
      String name,
      SlipNetwork network,
      Fit fit,
      List<Reading> readings,
      StageReadings stage,
      AgreementTest.Reach reach) {
    return fit.test()
        .map(
            test ->
                new AgreementTest(
                    readings.stream().map(Reading::id).collect(Collectors.toSet()),
                    test.probability(),
                    reach,
                    () -> List.of(doubted(name, network, fit, readings, stage))));
  }

  private static Note doubted(
      String name, SlipNetwork network, Fit fit, List<Reading> readings, StageReadings stage) {
    SlipFindings found = searched(network, readings, stage);
    Note note = doubted(name, fit, readings, found);
    List<String> ids = note.readingIds();
    if (ids.isEmpty() && found.located()) {
      ids = found.suspicions().get(0).readingIds().stream().sorted().toList();
    }
    return new Note(note.kind(), note.text() + explained(found, ids), ids);
  }

  /** A network that a slip has bent so far that nothing near the drawing fits it. */
  public static Optional<Note> ofUnsettled(
      String name, SlipNetwork network, List<Reading> readings, StageReadings stage) {
    SlipFindings found = searched(network, readings, stage);
    return found.state() != SlipFindings.State.EXPLAINED
        ? Optional.empty()
        : Optional.of(
            new Note(
                Note.Kind.SLIP_SUSPECTED,
                "No figure near the drawing fits the readings of "
                    + name
                    + ". Nothing was dropped."
                    + explained(found, List.of()),
                found.leading().stream()
                    .flatMap(suspicion -> suspicion.readingIds().stream())
                    .distinct()
                    .sorted()
                    .toList()));
  }

  private static SlipFindings searched(
      SlipNetwork network, List<Reading> readings, StageReadings stage) {
    return SlipSearch.search(
        network,
        readings.stream().map(SlipReading::of).toList(),
        SlipOptions.USUAL.withEdges(stage.edgesMetres(readings)));
  }

  /**
   * The reading that would tell the suspicions apart, as it is what to do, and the first of them,
   * counted. That readings named already are wrong by some amount is not told twice.
   */
  private static String explained(SlipFindings found, List<String> named) {
    List<Suspicion> leading = worthTelling(found.leading(), named);
    if (leading.isEmpty()) {
      return found
          .next()
          .filter(next -> found.state() == SlipFindings.State.NOT_EXPLAINED)
          .map(
              next ->
                  " Two slips at once might, but too little checks them to tell which. "
                      + next.words()
                      + ": it helps to tell.")
          .orElse("");
    }
    String next =
        found.next().map(best -> " " + best.words() + ": it helps to tell which.").orElse("");
    StringBuilder text = new StringBuilder(next);
    text.append(
        found.takesTwo()
            ? " Two slips at once would explain it, best first:"
            : " What would explain it, best first:");
    int told = Math.min(TOLD, leading.size());
    for (int i = 0; i < told; i++) {
      text.append(' ').append(i + 1).append(". ").append(leading.get(i).words());
    }
    if (leading.size() > told) {
      text.append(" And ").append(leading.size() - told).append(" more that explain it as well.");
    }
    return text.toString();
  }

  private static List<Suspicion> worthTelling(List<Suspicion> leading, List<String> named) {
    Set<Set<String>> told = new HashSet<>(Set.of(Set.copyOf(named)));
    return leading.stream()
        .filter(
            s -> told.add(Set.copyOf(s.readingIds())) || s.slip().kind() != SlipKind.SIZE_UNKNOWN)
        .toList();
  }

  private static Note doubted(String network, Fit fit, List<Reading> readings, SlipFindings found) {
    Map<String, Reading> byId =
        readings.stream().collect(Collectors.toMap(Reading::id, Function.identity()));
    List<String> suspects =
        found.takesTwo()
            ? List.of()
            : fit.suspectedSlip(DirectValues.SIGNIFICANCE)
                .map(SuspectedSlip::observationIds)
                .orElse(List.of());
    String probability =
        fit.test().map(test -> LengthDisplay.decimal(test.probability() * 100, 2)).orElse("");
    String head =
        "The readings of "
            + network
            + " do not fit together (chance "
            + (probability.equals("0.00") ? "below 0.01" : probability)
            + " %).";
    return new Note(
        Note.Kind.SLIP_SUSPECTED, head + " " + where(fit, suspects, byId), ids(suspects, byId));
  }

  /** How much, and which way the reading itself is wrong: a staff counts down, a level up. */
  private static String tooMuch(double slip, @Nullable Reading reading) {
    MeasuredQuantity quantity =
        reading == null ? MeasuredQuantity.DISTANCE : reading.target().quantity();
    boolean more = quantity == MeasuredQuantity.STAFF ? slip < 0 : slip > 0;
    return switch (quantity) {
      case DISTANCE -> Millimetres.of(slip) + (more ? " too long" : " too short");
      case HEIGHT, STAFF -> Millimetres.of(slip) + (more ? " too high" : " too low");
      case TILT -> degrees(Math.abs(slip)) + (more ? " too much" : " too little");
      default -> Millimetres.of(slip) + (more ? " too much" : " too little");
    };
  }

  private static String degrees(double radians) {
    return LengthDisplay.decimal(StrictMath.toDegrees(radians), 3) + " deg";
  }

  private static List<String> ids(List<String> suspects, Map<String, Reading> byId) {
    return suspects.stream().filter(byId::containsKey).sorted().toList();
  }

  private static String where(Fit fit, List<String> suspects, Map<String, Reading> byId) {
    List<Target> targets =
        suspects.stream()
            .map(byId::get)
            .filter(Objects::nonNull)
            .map(Reading::target)
            .distinct()
            .sorted(Comparator.comparing(Target::text))
            .toList();
    if (targets.isEmpty()) {
      return "No single reading explains it. Nothing was dropped; read them again.";
    }
    String target = TargetWords.of(targets.get(0));
    if (targets.size() == 1 && suspects.size() == 1) {
      AdjustedObservation suspect = fit.observation(suspects.get(0));
      return "Most likely "
          + target
          + " reads "
          + tooMuch(suspect.estimatedSlip().orElse(0), byId.get(suspects.get(0)))
          + ". Nothing was dropped; read it again and void the wrong one.";
    }
    if (targets.size() == 1) {
      return "There is a slip in the readings of "
          + target
          + ", but it cannot be told in which. Nothing was dropped; read it again and void the wrong"
          + " one.";
    }
    boolean any = suspects.size() == byId.size();
    return "There is a slip in one of "
        + (any ? "them" : "these")
        + ", but it cannot be told in which"
        + (any ? "" : ": " + TargetWords.all(targets))
        + ". Nothing was dropped; read them again.";
  }
}
