package datumpeg.desktop.findings;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.desktop.findings.PlanSketch.Arrow;
import datumpeg.desktop.findings.PlanSketch.Level;
import datumpeg.desktop.findings.PlanSketch.Span;
import datumpeg.desktop.findings.PlanSketch.Spot;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sketches a plan from a stage's findings: what was found, how much too large, what it says. */
final class PlanSketcher {
  private static final Pattern COLUMN = Pattern.compile("([A-Z]\\d+)/(along|across)");
  private static final Pattern PAIR = Pattern.compile("([A-Z]\\d+)-([A-Z]\\d+)/(base|eave)");

  /** The largest deviation is drawn at most this share of the building's shorter side. */
  private static final double LARGEST_SHARE = 0.12;

  private static final double MILLIMETRES = 1000;

  private final SetOut setOut;
  private final StageFindings findings;
  private final Words words;

  PlanSketcher(SetOut setOut, StageFindings findings, Words words) {
    this.setOut = setOut;
    this.findings = findings;
    this.words = words;
  }

  PlanSketch sketch() {
    List<Spot> columns = columns();
    Map<String, Double> deviations = cornerDeviations();
    double slabFactor = factor(deviations.values().stream().mapToDouble(d -> d).max().orElse(0));
    Map<String, Lean> leans = leans();
    double leanFactor = factor(leans.values().stream().mapToDouble(Lean::length).max().orElse(0));
    List<Spot> found = deviations.isEmpty() ? List.of() : found(slabFactor);
    List<Arrow> arrows = leans.values().stream().map(lean -> arrow(lean, leanFactor)).toList();
    List<String> legend = new ArrayList<>();
    if (!found.isEmpty()) {
      legend.add(words.text("plan.slab-factor", Figures.factor(slabFactor)));
    }
    if (!arrows.isEmpty()) {
      legend.add(words.text("plan.lean-factor", Figures.factor(leanFactor)));
    }
    List<Span> spans = spans();
    if (!spans.isEmpty()) {
      legend.add(words.text("plan.spacing"));
    }
    List<Level> levels = levels();
    if (!levels.isEmpty()) {
      legend.add(words.text("plan.levels"));
    }
    return new PlanSketch(
        outline(),
        found,
        columns,
        arrows,
        spans,
        levels,
        String.join("  ", legend),
        spoken(leans, spans, levels, found),
        legend.isEmpty() ? words.text("plan.nothing") : "");
  }

  private List<Spot> outline() {
    return setOut.slab().corners().entrySet().stream()
        .map(corner -> spot(corner.getKey(), corner.getValue()))
        .toList();
  }

  private static Spot spot(String name, PlanPoint point) {
    return new Spot(name, point.xMetres(), point.yMetres());
  }

  private List<Spot> columns() {
    List<Spot> spots = new ArrayList<>();
    for (int number : setOut.portalFrameNumbers()) {
      for (char letter : new char[] {'A', 'B'}) {
        GridMark mark = new GridMark(letter, number);
        spots.add(spot(mark.text(), setOut.position(PointName.at("base", mark)).plan()));
      }
    }
    return spots;
  }

  /** How far each measured corner lies from the design, in metres; empty unless all were found. */
  private Map<String, Double> cornerDeviations() {
    Map<String, Double> deviations = new LinkedHashMap<>();
    for (Map.Entry<String, PlanPoint> corner : setOut.slab().corners().entrySet()) {
      PointEstimate estimate = findings.points().get("slab." + corner.getKey());
      if (estimate == null) {
        return Map.of();
      }
      PlanPoint at = new PlanPoint(estimate.xMetres(), estimate.yMetres());
      deviations.put(corner.getKey(), at.distanceMetres(corner.getValue()));
    }
    return deviations;
  }

  private List<Spot> found(double factor) {
    List<Spot> spots = new ArrayList<>();
    setOut
        .slab()
        .corners()
        .forEach(
            (name, design) ->
                Optional.ofNullable(findings.points().get("slab." + name))
                    .ifPresent(at -> spots.add(exaggerated(name, design, at, factor))));
    return spots;
  }

  private static Spot exaggerated(String name, PlanPoint design, PointEstimate at, double factor) {
    return new Spot(
        name,
        design.xMetres() + factor * (at.xMetres() - design.xMetres()),
        design.yMetres() + factor * (at.yMetres() - design.yMetres()));
  }

  private Map<String, Lean> leans() {
    Map<String, Lean> leans = new LinkedHashMap<>();
    for (Outcome outcome : findings.outcomes()) {
      Matcher match = COLUMN.matcher(outcome.target());
      if (outcome.check().equals("column-plumb") && match.matches()) {
        String mark = match.group(1);
        Lean before = leans.getOrDefault(mark, Lean.none(mark));
        leans.put(mark, before.with(match.group(2), outcome));
      }
    }
    return leans;
  }

  private Arrow arrow(Lean lean, double factor) {
    Position base = place("base." + lean.mark());
    return new Arrow(
        base.xMetres(),
        base.yMetres(),
        base.xMetres() + factor * lean.alongMetres(),
        base.yMetres() + factor * lean.acrossMetres(),
        Figures.whole(lean.length() * MILLIMETRES),
        lean.standing());
  }

  /** One span a bay and side, whether it was measured at the base, at the eave or at both. */
  private List<Span> spans() {
    Map<String, Bay> bays = new LinkedHashMap<>();
    for (Outcome outcome : findings.outcomes()) {
      Matcher match = PAIR.matcher(outcome.target());
      if (outcome.check().equals("frame-spacing") && match.matches()) {
        String marks = match.group(1) + "-" + match.group(2);
        Bay before = bays.getOrDefault(marks, Bay.none(match.group(1), match.group(2)));
        bays.put(marks, before.with(match.group(3), outcome));
      }
    }
    return bays.values().stream().map(this::span).toList();
  }

  private Span span(Bay bay) {
    Position from = place("base." + bay.from());
    Position to = place("base." + bay.to());
    return new Span(
        from.xMetres(), from.yMetres(), to.xMetres(), to.yMetres(), label(bay), bay.standing());
  }

  private String label(Bay bay) {
    if (bay.base().isEmpty() || bay.eave().isEmpty()) {
      return bay.base().isEmpty() ? words.text("plan.eave", bay.eave()) : bay.base();
    }
    return bay.base() + " / " + bay.eave();
  }

  private List<Level> levels() {
    return findings.levels().values().stream()
        .map(
            level ->
                new Level(
                    level.xMetres(),
                    level.yMetres(),
                    Figures.signedWhole(level.levelMetres() * MILLIMETRES)))
        .toList();
  }

  private Position place(String point) {
    return setOut.position(
        PointName.parse(point)
            .orElseThrow(() -> new IllegalArgumentException(point + " is not a point.")));
  }

  /** The largest of 1, 2, 5, 10 … that keeps the largest deviation in the drawing. */
  private double factor(double largestMetres) {
    double shorter = Math.min(setOut.building().spanMetres(), setOut.building().lengthMetres());
    if (!(largestMetres > 0)) {
      return 1;
    }
    double wanted = LARGEST_SHARE * shorter / largestMetres;
    double decade = StrictMath.pow(10, Math.floor(StrictMath.log10(wanted)));
    double steps = wanted / decade;
    return Math.max(1, decade * (steps >= 5 ? 5 : steps >= 2 ? 2 : 1));
  }

  private String spoken(
      Map<String, Lean> leans, List<Span> spans, List<Level> levels, List<Spot> found) {
    List<String> parts = new ArrayList<>();
    if (!found.isEmpty()) {
      parts.add(words.count("plan.spoken-corners", found.size()));
    }
    leans
        .values()
        .forEach(
            lean ->
                parts.add(
                    words.text(
                        "plan.spoken-lean",
                        lean.mark(),
                        Figures.whole(lean.length() * MILLIMETRES),
                        words.standing(lean.standing()))));
    if (!spans.isEmpty()) {
      parts.add(words.count("plan.spoken-spans", spans.size()));
    }
    if (!levels.isEmpty()) {
      parts.add(words.count("plan.spoken-levels", levels.size()));
    }
    return words.text("plan.spoken") + " " + String.join(" ", parts);
  }

  /** The spacing of two frames on one side; the graver standing of base and eave. */
  private record Bay(String from, String to, String base, String eave, Standing standing) {
    static Bay none(String from, String to) {
      return new Bay(from, to, "", "", Standing.NO_LIMIT);
    }

    Bay with(String height, Outcome outcome) {
      String found = Figures.signedWhole(outcome.deviation() * MILLIMETRES);
      Standing graver = graver(standing, Standing.of(outcome));
      return height.equals("base")
          ? new Bay(from, to, found, eave, graver)
          : new Bay(from, to, base, found, graver);
    }
  }

  private static Standing graver(Standing one, Standing other) {
    return one.compareTo(other) < 0 ? one : other;
  }

  /** A column's lean along and across; the graver standing of the two. */
  private record Lean(String mark, double alongMetres, double acrossMetres, Standing standing) {
    static Lean none(String mark) {
      return new Lean(mark, 0, 0, Standing.NO_LIMIT);
    }

    Lean with(String axis, Outcome outcome) {
      Standing graver = graver(standing, Standing.of(outcome));
      return axis.equals("along")
          ? new Lean(mark, outcome.deviation(), acrossMetres, graver)
          : new Lean(mark, alongMetres, outcome.deviation(), graver);
    }

    double length() {
      return Math.sqrt(alongMetres * alongMetres + acrossMetres * acrossMetres);
    }
  }
}
