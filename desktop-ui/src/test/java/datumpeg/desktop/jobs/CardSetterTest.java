package datumpeg.desktop.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CardSetterTest {
  private static final Words WORDS = Words.of(Locale.ROOT);

  @BeforeAll
  static void start() {
    HeadlessToolkit.start();
  }

  private static CardSetter setter(double times) {
    Palette light = Palette.light();
    return new CardSetter(
        WORDS, new Palette(light.inks(), light.lettersPixels() * times, light.heavyLetters()));
  }

  private static JobCard card() {
    List<StageTile> stages =
        IntStream.range(0, 8)
            .mapToObj(
                number ->
                    new StageTile(
                        "stage-" + number,
                        "Stage " + number,
                        number % 2 == 0
                            ? List.of(
                                new StageTile.Count(Standing.NONCONFORMING, 12),
                                new StageTile.Count(Standing.NOT_MEASURED, 3))
                            : List.of(),
                        number == 2 ? HoldPoint.State.OPEN : HoldPoint.State.NONE))
            .toList();
    return new JobCard("invented-1", "An invented shed", "invented-1  ·  140 readings", "", stages);
  }

  private static CardLayout set(double times, double width) {
    return HeadlessToolkit.on(() -> setter(times).set(card(), width));
  }

  /** At 200 % in a narrow window even single words are broken rather than cut. */
  @ParameterizedTest
  @CsvSource({"1, 1200", "2, 1200", "2, 500", "1, 300"})
  void everyTextIsWithinItsPlace(double times, double width) {
    CardLayout layout = set(times, width);
    for (CardLayout.Line line : layout.lines()) {
      double right = line.x() + HeadlessToolkit.on(() -> line.face().width(line.text()));
      Optional<CardLayout.Tile> tile =
          layout.tiles().stream().filter(each -> each.holds(line.x(), line.y())).findFirst();
      double limit = tile.map(each -> each.left() + each.width()).orElse(width);
      boolean oneLetter = line.text().length() == 1;
      assertTrue(oneLetter || right <= limit + 1, line.text() + " ends at " + right);
      assertTrue(line.y() <= layout.height(), line.text() + " is below the card");
    }
  }

  @Test
  void everyWordOfTheCardIsSet() {
    CardLayout layout = set(1, 1400);
    String all = String.join(" ", layout.lines().stream().map(CardLayout.Line::text).toList());
    assertTrue(all.startsWith("An invented shed invented-1  ·  140 readings Stage 0 "), all);
    assertEquals(4, all.split("12 nonconforming", -1).length - 1, all);
    assertEquals(8, all.split(WORDS.text("jobs.tile-empty"), -1).length - 1, all);
    assertTrue(all.contains(WORDS.text("jobs.hold-open")), all);
    assertEquals(8, layout.marks().size());
    assertEquals(1, layout.rules().size());
  }

  /** The stages stand in more rows rather than break a word. */
  @ParameterizedTest
  @CsvSource({"1, 1400, 1", "1, 700, 2", "2, 1200, 2", "1, 320, 4"})
  void noWordIsBrokenWhereATileCanBeWideEnough(double times, double width, int leastRows) {
    CardLayout layout = set(times, width);
    List<String> texts = layout.lines().stream().map(CardLayout.Line::text).toList();
    assertEquals(
        4, texts.stream().filter(text -> text.endsWith("nonconforming")).count(), texts::toString);
    long rows = layout.tiles().stream().map(CardLayout.Tile::top).distinct().count();
    assertTrue(rows >= leastRows, rows + " rows");
    assertTrue(
        layout.tiles().stream().allMatch(tile -> tile.left() + tile.width() <= width + 1e-6));
  }

  @Test
  void narrowerCardIsHigher() {
    assertTrue(set(1, 500).height() > set(1, 1200).height());
  }

  @Test
  void stageIsFoundWhereItIsSet() {
    CardLayout layout = set(1, 1200);
    CardLayout.Tile third = layout.tiles().get(2);
    assertEquals(
        "stage-2",
        layout.stageAt(third.left() + 1, third.top() + 1).map(StageTile::stage).orElse(""));
    assertTrue(layout.stageAt(3, 3).isEmpty(), "the title is no stage");
  }

  @Test
  void cardWithoutStagesSaysWhy() {
    JobCard broken = new JobCard("old", "old", "old", "The job file has a mistake.", List.of());
    CardLayout layout = HeadlessToolkit.on(() -> setter(1).set(broken, 600));
    assertTrue(layout.tiles().isEmpty());
    assertEquals("The job file has a mistake.", layout.lines().get(2).text());
  }
}
