package datumpeg.analysis.check.frame;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.check.SteepTilts;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Lean of columns at column height H, and the mean lean of each portal.
 *
 * <p>From a tilt θ read at height z: H·tan θ, with form uncertainty 4·s·|1 − 2z/H|/√3 added: a
 * column bowed to a parabola of rise s slopes by 4·s/H·(1 − 2z/H) at z, taken as rectangular. From
 * a plumb line: eave offset − base offset. All tilts of a session are adjusted together, so that
 * columns read on two faces calibrate those read on one: on face 1 the meter reads θ + b, on face 2
 * −θ + b.
 *
 * <p>Worked: +0.32° and −0.18° on two faces give θ = 0.25°, zero error 0.07°, and over 4200 mm a
 * lean of 18.326 mm. A portal whose columns lean +18 and −16 mm has a mean of +1 mm.
 */
final class ColumnPlumb {
  private final Job job;
  private final OutcomeMaker outcomes;

  ColumnPlumb(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  /**
   * Leans as the readings of each column give them.
   *
   * @param leans one for each column and direction
   * @param used the readings looked at
   */
  record Observed(
      List<Lean> leans, List<Note> notes, List<AgreementTest> tests, List<Reading> used) {}

  Observed observed(StageReadings stage) {
    List<Reading> tilts = stage.where(ColumnPlumb::isColumnTilt);
    List<Reading> offsets =
        stage.where(target -> target.quantity() == MeasuredQuantity.PLUMB_OFFSET);
    List<Note> notes = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    Map<String, Lean> leans = new TreeMap<>();
    DirectValues.of(tilts, stage)
        .ifPresent(
            values -> {
              addTilts(values, stage, leans, notes);
              tests.addAll(values.tests());
            });
    DirectValues.of(offsets, stage)
        .ifPresent(
            values -> {
              addOffsets(values, stage, leans, notes);
              tests.addAll(values.tests());
            });
    List<Reading> used = new ArrayList<>(tilts);
    used.addAll(offsets);
    return new Observed(List.copyOf(leans.values()), notes, tests, used);
  }

  /** Decided on the lean that follows from all readings of the frames, where these agree. */
  CheckResult of(StageReadings stage, Observed observed, FrameNetwork network) {
    Map<String, Lean> leans = new TreeMap<>();
    List<Outcome> found = new ArrayList<>();
    double height = job.setOut().building().columnHeightMetres();
    for (Lean asObserved : observed.leans()) {
      Lean lean =
          network.agrees() && network.holds(asObserved.readings())
              ? network.lean(asObserved).orElse(asObserved)
              : asObserved;
      leans.put(lean.target(), lean);
      Outcome outcome =
          outcomes.signedWithAside(
              "column-plumb",
              lean.target(),
              lean.estimate(),
              height,
              stage.evidence(lean.readings()),
              Adjusted.aside(asObserved.estimate(), lean.estimate()));
      found.add(
          Math.abs(outcome.deviation()) > height ? outcome.withRemedy(Plumbing.NO_PROP) : outcome);
    }
    found.addAll(portals(leans, stage, height));
    return CheckResult.of(found, observed.notes(), observed.used()).with(observed.tests());
  }

  private static boolean isColumnTilt(Target target) {
    return target.quantity() == MeasuredQuantity.TILT && target.first().feature().equals("column");
  }

  private void addTilts(
      DirectValues tilts, StageReadings stage, Map<String, Lean> leans, List<Note> notes) {
    tilts
        .readings()
        .forEach(
            (text, readings) -> {
              Target target = readings.get(0).target();
              GridMark mark = target.first().gridMark().orElseThrow();
              double height = job.setOut().building().columnHeightMetres();
              Lean lean =
                  new Lean(
                      mark,
                      target.axis().orElseThrow(),
                      tilts.values().quantity(text).tangent().scaled(height),
                      form(readings, height),
                      Lean.Source.TILT_METER,
                      readings);
              leans.put(lean.target(), lean);
            });
    tilts.readings().values().forEach(read -> notes.addAll(SteepTilts.of(read)));
    oneFaceNote(tilts, stage).ifPresent(notes::add);
  }

  private double form(List<Reading> readings, double height) {
    return height
        * readings.stream()
            .mapToDouble(reading -> Math.abs(bowRadians(reading, job.setOut().building())))
            .average()
            .orElse(0);
  }

  /** What a column's bow adds to a tilt read away from mid-height: 4·s/H·(1 − 2z/H)/√3, signed. */
  static double bowRadians(Reading reading, Building building) {
    double height = building.columnHeightMetres();
    double up = reading.upMetres().orElse(height / 2);
    return 4 * building.columnStraightnessMetres() / height * (1 - 2 * up / height) / Math.sqrt(3);
  }

  /** Without any second face the zero error is known only as well as the meter is stated. */
  private static Optional<Note> oneFaceNote(DirectValues tilts, StageReadings stage) {
    List<Reading> all = tilts.readings().values().stream().flatMap(List::stream).toList();
    boolean anySecondFace = all.stream().anyMatch(reading -> reading.face() == 2);
    boolean sharesAnError =
        all.stream().anyMatch(r -> !stage.observation(r).commonParts().isEmpty());
    return anySecondFace || !sharesAnError
        ? Optional.empty()
        : Optional.of(
            new Note(
                Note.Kind.INFORMATION,
                "No column was read on two faces, so the tilt meter's zero error is part of every"
                    + " lean. Turn the meter end for end on two or three columns to remove it.",
                List.of()));
  }

  private void addOffsets(
      DirectValues offsets, StageReadings stage, Map<String, Lean> leans, List<Note> notes) {
    for (String text : offsets.readings().keySet()) {
      Target eave = offsets.readingsOf(List.of(text)).get(0).target();
      if (!eave.first().feature().equals("eave")) {
        continue;
      }
      String base = "base" + text.substring("eave".length());
      if (!offsets.values().contains(base)) {
        notes.add(
            new Note(
                Note.Kind.UNDETERMINED,
                "The plumb line at column "
                    + eave.first().place()
                    + " was read at the eave only, so its lean is open: read "
                    + TargetWords.of(Target.parse(MeasuredQuantity.PLUMB_OFFSET, base))
                    + " too.",
                offsets.readingsOf(List.of(text)).stream().map(Reading::id).toList()));
        continue;
      }
      Linearised difference =
          offsets.values().quantity(text).minus(offsets.values().quantity(base));
      double scale =
          job.setOut().building().columnHeightMetres() / job.setOut().building().eaveHeightMetres();
      Lean lean =
          new Lean(
              eave.first().gridMark().orElseThrow(),
              eave.axis().orElseThrow(),
              difference.scaled(scale),
              0,
              Lean.Source.PLUMB_LINE,
              offsets.readingsOf(List.of(text, base)));
      Lean fromTilt = leans.get(lean.target());
      boolean tiltCounts = fromTilt != null && !stage.anyOutdated(fromTilt.readings());
      boolean lineCounts = !stage.anyOutdated(lean.readings());
      if (fromTilt == null || (lineCounts && !tiltCounts)) {
        leans.put(lean.target(), lean);
      } else if (lineCounts == tiltCounts) {
        notes.add(compare(fromTilt, lean));
      }
    }
  }

  /** Two ways to one lean: the tilt decides, and a contradiction is said. */
  private static Note compare(Lean fromTilt, Lean fromLine) {
    Estimate difference = fromTilt.combined(1, fromLine, -1);
    boolean agrees = Math.abs(difference.value()) <= difference.expanded();
    List<Reading> both = new ArrayList<>(fromTilt.readings());
    both.addAll(fromLine.readings());
    return new Note(
        agrees ? Note.Kind.INFORMATION : Note.Kind.SLIP_SUSPECTED,
        "Column "
            + fromTilt.mark().text()
            + ", "
            + fromTilt.axis().text()
            + " the building: tilt meter and plumb line "
            + (agrees ? "agree" : "contradict each other")
            + " ("
            + Millimetres.signed(fromTilt.estimate().value())
            + " and "
            + Millimetres.signed(fromLine.estimate().value())
            + ")"
            + (agrees ? "; the tilt meter's value is used." : "; read both again."),
        both.stream().map(Reading::id).sorted().toList());
  }

  /** Mean lean of a portal's two columns across, and its splay beside it. */
  private List<Outcome> portals(Map<String, Lean> leans, StageReadings stage, double height) {
    List<Outcome> found = new ArrayList<>();
    for (int number : job.setOut().portalFrameNumbers()) {
      Lean a = leans.get("A" + number + "/across");
      Lean b = leans.get("B" + number + "/across");
      if (a == null || b == null) {
        continue;
      }
      Estimate mean = a.combined(0.5, b, 0.5);
      Estimate splay = b.combined(1, a, -1);
      List<Reading> both = new ArrayList<>(a.readings());
      both.addAll(b.readings());
      found.add(
          outcomes.signedWithAside(
              "portal-plumb",
              number + "/across",
              mean,
              height,
              stage.evidence(both),
              "splay B − A " + Millimetres.signedWith(splay.value(), splay.expanded())));
    }
    return found;
  }
}
