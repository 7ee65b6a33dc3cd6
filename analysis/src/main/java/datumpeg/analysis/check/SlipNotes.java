package datumpeg.analysis.check;

import datumpeg.analysis.adjust.AdjustedObservation;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.slip.SlipFindings;
import datumpeg.analysis.slip.SlipKind;
import datumpeg.analysis.slip.SlipNetwork;
import datumpeg.analysis.slip.SlipOptions;
import datumpeg.analysis.slip.SlipReading;
import datumpeg.analysis.slip.SlipSearch;
import datumpeg.analysis.slip.Suspicion;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The words for readings that contradict each other. Nothing is dropped or corrected. */
public final class SlipNotes {
  /** So many slips are told in a note; more do not help to find the wrong reading. */
  private static final int TOLD = 2;

  private SlipNotes() {}

  /** One target read several times, with values that cannot all be right. */
  public static Note contradiction(String target, List<Reading> readings) {
    double least = readings.stream().mapToDouble(Reading::valueSi).min().orElse(0);
    double most = readings.stream().mapToDouble(Reading::valueSi).max().orElse(0);
    boolean tilt = readings.get(0).target().quantity() == MeasuredQuantity.TILT;
    String spread =
        tilt
            ? LengthDisplay.decimal(StrictMath.toDegrees(most - least), 3) + " deg"
            : Millimetres.of(most - least);
    return new Note(
        Note.Kind.SLIP_SUSPECTED,
        "The readings of "
            + target
            + " contradict each other by "
            + spread
            + (tilt ? " (faces apart)" : "")
            + ", more than their uncertainty explains. Read it again; void the wrong one.",
        readings.stream().map(Reading::id).sorted().toList());
  }

  /**
   * A network whose observations do not fit together: where the slip is, which slips would explain
   * it, best first, and what to read next.
   */
  public static Optional<Note> ofNetwork(
      String name, SlipNetwork network, Fit fit, List<Reading> readings, StageReadings stage) {
    Optional<Note> note = ofNetwork(name, fit, readings);
    if (note.isEmpty()) {
      return note;
    }
    SlipFindings found = searched(network, readings, stage);
    List<String> ids = note.get().readingIds();
    if (ids.isEmpty() && found.located()) {
      ids = found.suspicions().get(0).readingIds().stream().sorted().toList();
    }
    return Optional.of(new Note(note.get().kind(), note.get().text() + explained(found, ids), ids));
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
   * The first suspicions, counted, and the reading that would tell them apart. That a reading named
   * already is wrong by some amount is not told twice.
   */
  private static String explained(SlipFindings found, List<String> named) {
    List<Suspicion> leading =
        found.leading().stream()
            .filter(s -> s.slip().kind() != SlipKind.SIZE_UNKNOWN || !named.equals(s.readingIds()))
            .toList();
    if (leading.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder(" What would explain it, best first:");
    int told = Math.min(TOLD, leading.size());
    for (int i = 0; i < told; i++) {
      text.append(' ').append(i + 1).append(". ").append(leading.get(i).words());
    }
    if (leading.size() > told) {
      text.append(" And ").append(leading.size() - told).append(" more that explain it as well.");
    }
    found
        .next()
        .ifPresent(
            next -> text.append(' ').append(next.words()).append(": it helps to tell which."));
    return text.toString();
  }

  private static Optional<Note> ofNetwork(String network, Fit fit, List<Reading> readings) {
    boolean agrees = fit.test().map(test -> test.agrees(DirectValues.SIGNIFICANCE)).orElse(true);
    if (agrees) {
      return Optional.empty();
    }
    Map<String, Reading> byId =
        readings.stream().collect(Collectors.toMap(Reading::id, Function.identity()));
    List<String> suspects =
        fit.suspectedSlip(DirectValues.SIGNIFICANCE)
            .map(datumpeg.analysis.adjust.SuspectedSlip::observationIds)
            .orElse(List.of());
    String probability =
        fit.test().map(test -> LengthDisplay.decimal(test.probability() * 100, 2)).orElse("");
    String head =
        "The readings of "
            + network
            + " do not fit together (chance "
            + (probability.equals("0.00") ? "below 0.01" : probability)
            + " %).";
    return Optional.of(
        new Note(
            Note.Kind.SLIP_SUSPECTED,
            head + " " + where(fit, suspects, byId),
            ids(suspects, byId)));
  }

  /** How much, and which way the reading itself is wrong: a staff counts down, a level up. */
  private static String tooMuch(double slipMetres, @Nullable Reading reading) {
    MeasuredQuantity quantity =
        reading == null ? MeasuredQuantity.DISTANCE : reading.target().quantity();
    double inReading = quantity == MeasuredQuantity.STAFF ? -slipMetres : slipMetres;
    boolean level = quantity == MeasuredQuantity.STAFF || quantity == MeasuredQuantity.HEIGHT;
    String more = level ? " too high" : " too long";
    String less = level ? " too low" : " too short";
    return Millimetres.of(slipMetres) + (inReading > 0 ? more : less);
  }

  private static List<String> ids(List<String> suspects, Map<String, Reading> byId) {
    return suspects.stream().filter(byId::containsKey).sorted().toList();
  }

  private static String where(Fit fit, List<String> suspects, Map<String, Reading> byId) {
    List<String> targets =
        suspects.stream()
            .map(byId::get)
            .filter(Objects::nonNull)
            .map(reading -> reading.target().text())
            .distinct()
            .sorted()
            .toList();
    if (targets.isEmpty()) {
      return "No single reading explains it. Nothing was dropped; read them again.";
    }
    if (targets.size() == 1 && suspects.size() == 1) {
      AdjustedObservation suspect = fit.observation(suspects.get(0));
      return "Most likely "
          + targets.get(0)
          + " reads "
          + tooMuch(suspect.estimatedSlip().orElse(0), byId.get(suspects.get(0)))
          + ". Nothing was dropped; read it again and void the wrong one.";
    }
    if (targets.size() == 1) {
      return "There is a slip in the readings of "
          + targets.get(0)
          + ", but it cannot be told in which. Nothing was dropped; read it again and void the wrong"
          + " one.";
    }
    return "There is a slip, but it cannot be told which of "
        + String.join(", ", targets)
        + " it is in. Nothing was dropped; read them again.";
  }
}
