package datumpeg.desktop.jobs;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.Typeface;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * Sets the cards of jobs in letters of one size. A card is drawn and not put together of nodes: of
 * those it would need some fifty, and styling them took most of the window's start.
 *
 * <p>One thread.
 */
final class CardSetter {
  private static final double GAP = 0.4;
  private static final double PADDING = 0.45;

  /** Of words beside a mark. */
  private static final double INDENT = 1.3;

  private final Words words;
  private final Palette palette;
  private final Typeface title;
  private final Typeface sentence;
  private final Typeface plain;
  private final Typeface bold;
  private final Typeface small;
  private final Typeface hold;

  CardSetter(Words words, Palette palette) {
    this.words = words;
    this.palette = palette;
    this.title = new Typeface(palette.bold(1.3));
    this.sentence = new Typeface(palette.font(1.13));
    this.plain = new Typeface(palette.font(1));
    this.bold = new Typeface(palette.bold(1));
    this.small = new Typeface(palette.font(0.95));
    this.hold = new Typeface(palette.bold(0.93));
  }

  Palette palette() {
    return palette;
  }

  /** The card in a place of a width. */
  CardLayout set(JobCard card, double width) {
    Column column = new Column(0, width);
    column.add(card.title(), title, Ink.TEXT);
    column.space(0.2);
    column.add(card.particulars(), plain, Ink.QUIET);
    column.space(0.2);
    if (!card.sentence().isEmpty()) {
      column.add(card.sentence(), sentence, Ink.TEXT);
      return column.layout(column.y, List.of());
    }
    column.space(0.4);
    return strip(card, column, width);
  }

  private CardLayout strip(JobCard card, Column column, double width) {
    int perRow = perRow(card.stages(), width);
    double wide = tileWidth(width, perRow);
    double bottom = column.y;
    List<CardLayout.Tile> tiles = new ArrayList<>();
    for (int first = 0; first < card.stages().size(); first += perRow) {
      double top = tiles.isEmpty() ? bottom : bottom + palette.em(GAP);
      int end = Math.min(card.stages().size(), first + perRow);
      bottom = row(card.stages().subList(first, end), column, top, wide, tiles);
    }
    return column.layout(bottom, tiles);
  }

  /** As many stages side by side as no word must be broken for. */
  private int perRow(List<StageTile> stages, double width) {
    double needed = 0;
    for (StageTile stage : stages) {
      for (StageTile.Count count : stage.counts()) {
        for (String word : words.standing(count.standing()).split(" ", -1)) {
          needed = Math.max(needed, small.width(word) + palette.em(INDENT));
        }
      }
    }
    needed += 2 * palette.em(PADDING);
    int perRow = Math.max(1, stages.size());
    while (perRow > 1 && tileWidth(width, perRow) < needed) {
      perRow = (perRow + 1) / 2;
    }
    return perRow;
  }

  private double tileWidth(double width, int perRow) {
    return (width - palette.em(GAP) * (perRow - 1)) / perRow;
  }

  /** Sets tiles side by side and gives back where they end. */
  private double row(
      List<StageTile> stages, Column column, double top, double wide, List<CardLayout.Tile> tiles) {
    double bottom = top;
    for (int i = 0; i < stages.size(); i++) {
      Column inside = column.inside(i * (wide + palette.em(GAP)), top, wide);
      fill(stages.get(i), inside);
      bottom = Math.max(bottom, inside.y + palette.em(0.4));
    }
    for (int i = 0; i < stages.size(); i++) {
      double left = i * (wide + palette.em(GAP));
      tiles.add(new CardLayout.Tile(stages.get(i), left, top, wide, bottom - top));
    }
    return bottom;
  }

  private void fill(StageTile stage, Column column) {
    column.add(stage.title(), bold, Ink.TEXT);
    if (stage.counts().isEmpty()) {
      column.space(0.15);
      column.add(words.text("jobs.tile-empty"), plain, Ink.QUIET);
    }
    for (StageTile.Count count : stage.counts()) {
      column.space(0.15);
      column.addMarked(count, count.number() + " " + words.standing(count.standing()));
    }
    if (!stage.holdPointKey().isEmpty()) {
      column.space(0.15);
      column.rule();
      column.space(0.2);
      column.add(words.text(stage.holdPointKey()), hold, Ink.TEXT);
    }
  }

  /** Lines one below the other. */
  private final class Column {
    private final double left;
    private final double width;
    private final List<CardLayout.Line> lines;
    private final List<CardLayout.Mark> marks;
    private final List<CardLayout.Rule> rules;
    private double y;

    Column(double left, double width) {
      this(left, width, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    }

    private Column(
        double left,
        double width,
        List<CardLayout.Line> lines,
        List<CardLayout.Mark> marks,
        List<CardLayout.Rule> rules) {
      this.left = left;
      this.width = width;
      this.lines = lines;
      this.marks = marks;
      this.rules = rules;
    }

    /** A column inside a tile, whose lines belong to the same card. */
    Column inside(double tileLeft, double top, double tileWidth) {
      double padding = palette.em(PADDING);
      Column inside = new Column(tileLeft + padding, tileWidth - 2 * padding, lines, marks, rules);
      inside.y = top + palette.em(0.4);
      return inside;
    }

    void space(double em) {
      y += palette.em(em);
    }

    void add(String text, Typeface face, Ink ink) {
      addLines(text, face, ink, 0);
    }

    void addMarked(StageTile.Count count, String text) {
      double size = palette.em(1);
      marks.add(
          new CardLayout.Mark(count.standing(), left + size / 2, y + small.lineHeight() / 2, size));
      addLines(text, small, Ink.TEXT, palette.em(INDENT));
    }

    private void addLines(String text, Typeface face, Ink ink, double indent) {
      for (String line : face.lines(text, width - indent)) {
        lines.add(new CardLayout.Line(line, face, ink, left + indent, y + face.ascent()));
        y += face.lineHeight();
      }
    }

    void rule() {
      rules.add(new CardLayout.Rule(left, Math.rint(y) + 0.5, width));
    }

    CardLayout layout(double bottom, List<CardLayout.Tile> tiles) {
      return new CardLayout(Math.ceil(bottom), lines, marks, rules, tiles);
    }
  }
}
