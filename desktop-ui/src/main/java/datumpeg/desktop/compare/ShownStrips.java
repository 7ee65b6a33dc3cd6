package datumpeg.desktop.compare;

import datumpeg.desktop.chart.SvgPen;
import datumpeg.desktop.control.ExportButtons;
import datumpeg.desktop.control.Palette;
import java.util.function.Supplier;
import javafx.scene.layout.Region;

/**
 * A comparison to be taken elsewhere.
 *
 * @param asked what is compared of what, in words
 */
record ShownStrips(CompareViewModel model, Region node, Supplier<String> asked)
    implements ExportButtons.Shown {
  private static final double LEAST_WIDTH = 400;

  @Override
  public String name() {
    return "comparison";
  }

  @Override
  public String svg() {
    ComparePage page = model.page().get();
    Palette palette = Palette.light();
    double height = palette.em(StripPainter.heightInLetters(page.strips().size()));
    SvgPen pen = new SvgPen(Math.max(LEAST_WIDTH, node.getWidth()), height, palette);
    new StripPainter(page, pen).paint();
    return pen.picture(asked.get() + ". " + page.spoken());
  }

  @Override
  public Supplier<String> csv() {
    return model.page().get().csv();
  }
}
