package datumpeg.desktop.chart;

/** A row of very many points with control limits and permitted deviations. */
public final class LongChart extends LookedInto {
  private static final ChartLabels NO_LABELS =
      new ChartLabels("", "", "", "", index -> "", index -> "");

  private ChartPoints points = ChartPoints.of(0, index -> 0).build();
  private ChartLabels labels = NO_LABELS;

  public LongChart() {
    super("long-chart-drawing", ChartPainter.LEFT_LETTERS, ChartPainter.RIGHT_LETTERS);
  }

  /**
   * Shows other points; what is in view stays if there are as many.
   *
   * @param summary the whole chart in words
   */
  public void show(ChartPoints newPoints, ChartLabels newLabels, String summary) {
    points = newPoints;
    labels = newLabels;
    looksInto(points.size(), summary);
  }

  @Override
  protected String told(int index) {
    return labels.told().apply(index);
  }

  @Override
  protected void paint(ChartWindow inView, int read, Pen pen) {
    new ChartPainter(points, inView, labels, read, pen).paint();
  }
}
