package datumpeg.analysis.check.frame;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.check.StraightLine;
import datumpeg.analysis.check.assembly.FootLine;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far a line mark or a base lies beside the chord through its wall's ends; + = outward.
 *
 * <p>With the string's offsets e₁ and eₙ at the ends, a point a share s along is off the chord by
 * its offset − (1 − s)·e₁ − s·eₙ. Ends that were not read are taken to touch the string. Worked: 6
 * mm a third of the way between ends that read 0 and 3 mm is 6 − 1 = 5 mm out. Of a row with two or
 * more inner points read, {@link StraightLine} tells the greatest deviation besides.
 */
public final class Straightness implements Check {
  /** Two ends and two between them. */
  private static final int FEWEST_OF_A_ROW = 4;

  private final Job job;
  private final SetOut setOut;
  private final OutcomeMaker outcomes;
  private final String check;
  private final String feature;

  private Straightness(Job job, OutcomeMaker outcomes, String check, String feature) {
    this.job = job;
    this.setOut = job.setOut();
    this.outcomes = outcomes;
    this.check = check;
    this.feature = feature;
  }

  /** The marks of the column lines: {@code line-straight}. */
  public static Straightness ofLines(Job job, OutcomeMaker outcomes) {
    return new Straightness(job, outcomes, "line-straight", "line");
  }

  /** The bases of standing walls: {@code base-straight}. */
  public static Straightness ofBases(Job job, OutcomeMaker outcomes) {
    return new Straightness(job, outcomes, "base-straight", "base");
  }

  @Override
  public CheckResult of(StageReadings stage) {
    boolean lying = feature.equals("base") && FootLine.isAsked(job, stage);
    List<Reading> used = lying ? List.of() : stage.where(this::isOffset);
    Optional<DirectValues> direct = DirectValues.of(used, stage);
    if (direct.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    List<Note> notes = new ArrayList<>();
    List<Outcome> found = new ArrayList<>();
    for (char side : new char[] {'A', 'B'}) {
      oneEnd(side, direct.get()).ifPresent(notes::add);
      for (int number = 2; number < setOut.building().portalFrameCount(); number++) {
        outcome(side, number, direct.get(), stage).ifPresent(found::add);
      }
      found.addAll(row(side, direct.get(), stage));
    }
    return CheckResult.of(found, notes, used).with(direct.get().tests());
  }

  private boolean isOffset(Target target) {
    return target.quantity() == MeasuredQuantity.OFFSET
        && target.first().feature().equals(feature)
        && target.first().part().isEmpty();
  }

  private PointName point(char side, int number) {
    return PointName.at(feature, new GridMark(side, number));
  }

  private int last() {
    return setOut.building().portalFrameCount();
  }

  private Optional<Outcome> outcome(
      char side, int number, DirectValues direct, StageReadings stage) {
    PointName here = point(side, number);
    if (!direct.values().contains(here.text())) {
      return Optional.empty();
    }
    PointName first = point(side, 1);
    PointName end = point(side, last());
    double from = setOut.position(first).xMetres();
    double share =
        (setOut.position(here).xMetres() - from) / (setOut.position(end).xMetres() - from);
    Linearised off =
        direct
            .values()
            .quantity(here.text())
            .minus(end(first, direct).scaled(1 - share))
            .minus(end(end, direct).scaled(share));
    return Optional.of(
        outcomes.signedWithAside(
            check,
            feature.equals("line") ? here.text() : here.place(),
            off.estimate(),
            setOut.overallLengthMetres(),
            stage.evidence(direct.readingsOf(List.of(first.text(), here.text(), end.text()))),
            "from the chord through " + first.place() + " and " + end.place()));
  }

  /** The row as a whole; one inner point alone is told by itself. */
  private List<Outcome> row(char side, DirectValues direct, StageReadings stage) {
    List<StraightLine.Place> places = new ArrayList<>();
    List<String> read = new ArrayList<>();
    for (int number = 1; number <= last(); number++) {
      PointName here = point(side, number);
      boolean isRead = direct.values().contains(here.text());
      if (isRead) {
        read.add(here.text());
      }
      if (isRead || number == 1 || number == last()) {
        places.add(
            new StraightLine.Place(
                here.place(), setOut.position(here).xMetres(), end(here, direct)));
      }
    }
    return places.size() < FEWEST_OF_A_ROW
        ? List.of()
        : new StraightLine(places)
            .outcomes(feature + "." + side, outcomes, stage.evidence(direct.readingsOf(read)));
  }

  private static Linearised end(PointName end, DirectValues direct) {
    return direct.values().contains(end.text())
        ? direct.values().quantity(end.text())
        : direct.values().constant(0);
  }

  /** One end read off the string and the other not: said, because the chord hangs on both. */
  private Optional<Note> oneEnd(char side, DirectValues direct) {
    PointName first = point(side, 1);
    PointName end = point(side, last());
    boolean one = direct.values().contains(first.text());
    if (one == direct.values().contains(end.text())) {
      return Optional.empty();
    }
    PointName missing = one ? end : first;
    return Optional.of(
        new Note(
            Note.Kind.ASSUMED,
            "The string was taken to touch "
                + missing.text()
                + ", because its offset was not read.",
            List.of()));
  }
}
