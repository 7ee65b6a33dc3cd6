package datumpeg.desktop.trend;

import datumpeg.desktop.chart.ChartWindow;
import datumpeg.desktop.chart.LookedInto;
import datumpeg.desktop.chart.Pen;
import datumpeg.desktop.text.Words;

/** The trend of one target, to look into. */
final class TargetChart extends LookedInto {
  private final Words words;
  private TrendPage page;

  TargetChart(Words words, TrendPage page) {
    super("trend", TrendPainter.LEFT_LETTERS, TrendPainter.RIGHT_LETTERS);
    this.words = words;
    this.page = page;
  }

  void show(TrendPage newPage) {
    page = newPage;
    looksInto(page.points().size(), page.title() + ". " + page.spoken());
  }

  @Override
  protected String told(int index) {
    TrendPoint point = page.points().get(index);
    return point.label() + ": " + point.written() + ", " + words.standing(point.standing());
  }

  @Override
  protected void paint(ChartWindow inView, int read, Pen pen) {
    new TrendPainter(page, inView, read, pen).paint();
  }
}
