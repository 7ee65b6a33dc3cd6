package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.StageFindings;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A small plan that says where: the number of each cause stands at what it shows itself by. */
public final class WhereDrawing {
  private static final double WIDTH = 600;
  private static final double MARGIN = 84;
  private static final double HEIGHT = 190;
  private static final double MARK = 12;
  private static final int TRIES = 9;

  private final SetOut setOut;
  private final StageFindings findings;
  private final PlanView view;
  private final List<PlanPoint> outline;
  private final List<Box> marks = new ArrayList<>();
  private final Sketch sketch = new Sketch(WIDTH, "Where to look");

  private WhereDrawing(SetOut setOut, StageFindings findings) {
    this.setOut = setOut;
    this.findings = findings;
    this.outline = List.copyOf(setOut.slab().corners().values());
    this.view = PlanView.fitting(outline, WIDTH, MARGIN, HEIGHT);
  }

  public static Drawing of(SetOut setOut, StageFindings findings) {
    return new WhereDrawing(setOut, findings).drawing();
  }

  private Drawing drawing() {
    sketch.polygon(Ink.DESIGN, view.spots(outline));
    for (int number : setOut.portalFrameNumbers()) {
      frame(number);
    }
    Compass.draw(sketch, view, outline);
    SlipPlaces.of(setOut, findings).forEach(this::slip);
    for (int cause = 0; cause < findings.causes().size(); cause++) {
      mark(cause + 1, findings.causes().get(cause));
    }
    return new Drawing("Where to look", sketch.picture(), caption());
  }

  private String caption() {
    String slips =
        SlipPlaces.of(setOut, findings).isEmpty()
            ? ""
            : " Question mark: a reading that may hold a slip; the notes say which.";
    return causesCaption() + slips;
  }

  private String causesCaption() {
    return findings.causes().isEmpty()
        ? "The slab and its frames; nothing that was measured is out or undecided."
        : "Numbers: those of the causes, each where it shows itself. Filled square: out"
            + " of its limits. Diamond: undecided.";
  }

  private void frame(int number) {
    Spot a = view.spot(setOut.position(PointName.at("base", new GridMark('A', number))).plan());
    Spot b = view.spot(setOut.position(PointName.at("base", new GridMark('B', number))).plan());
    sketch.line(Ink.GRID, a, b);
    sketch.rectangle(Ink.SOLID, Box.around(a, 2));
    sketch.rectangle(Ink.SOLID, Box.around(b, 2));
    name(a.moved(0, 32), "A" + number);
    name(b.moved(0, -23), "B" + number);
  }

  private void name(Spot baseline, String mark) {
    if (setOut.building().portalFrameCount() <= 10) {
      sketch.words(baseline, Anchor.MIDDLE, Sketch.Weight.REGULAR, mark);
    }
  }

  /** A reading that may hold a slip: the line it was taken along, and a question mark. */
  private void slip(List<PlanPoint> ends) {
    List<Spot> spots = view.spots(ends);
    Spot from = spots.get(0);
    Spot to = spots.get(spots.size() - 1);
    sketch.line(Ink.DIAGONAL, from, to);
    Spot middle = free(new Spot((from.x() + to.x()) / 2, (from.y() + to.y()) / 2));
    marks.add(Box.around(middle, MARK));
    sketch.circle(Ink.PAPER, middle, MARK - 2);
    sketch.bareWords(middle.moved(0, 5), Anchor.MIDDLE, Sketch.Weight.BOLD, "?");
  }

  private void mark(int number, Cause cause) {
    Set<PlanPoint> places = new LinkedHashSet<>();
    cause.symptoms().stream().map(this::place).flatMap(Optional::stream).forEach(places::add);
    for (PlanPoint place : places) {
      Spot free = free(view.spot(place));
      marks.add(Box.around(free, MARK));
      VerdictMark.numbered(sketch, free, number, cause.kind());
    }
  }

  /** A symptom is a check and a target with a space between. */
  private Optional<PlanPoint> place(String symptom) {
    int space = symptom.indexOf(' ');
    return space < 0
        ? Optional.empty()
        : new Places(setOut).of(symptom.substring(0, space), symptom.substring(space + 1));
  }

  /** The spot itself, or the nearest to its side that no other mark covers. */
  private Spot free(Spot wanted) {
    for (int step = 0; step < TRIES; step++) {
      double aside = (step % 2 == 0 ? 1 : -1) * ((step + 1) / 2) * 2 * MARK;
      Spot candidate = wanted.moved(aside, 0);
      if (marks.stream().noneMatch(Box.around(candidate, MARK)::overlaps)) {
        return candidate;
      }
    }
    return wanted;
  }
}
