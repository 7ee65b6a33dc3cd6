package datumpeg.bridge.cli;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.collect.GuideState;
import datumpeg.bridge.collect.LinkState;
import datumpeg.bridge.collect.LiveDeviation;
import datumpeg.bridge.collect.SessionWatcher;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.PrintStream;

/** Says where a watched value stands, one line a value, each printed in one piece. */
final class WatchTalk implements SessionWatcher {
  private final PrintStream err;
  private final LiveDeviation live;
  private final boolean tones;

  WatchTalk(PrintStream err, LiveDeviation live, boolean tones) {
    this.err = err;
    this.live = live;
    this.tones = tones;
  }

  @Override
  public void asking(Wanted wanted, int leftAfterThis) {
    err.print(
        "Watching %s (%s). Take the hand off, then type keep; quit ends without keeping.%n"
            .formatted(wanted.words(), wanted.name()));
    if (live.isBounded()) {
      boolean decides = live.limitMetres() > live.uncertaintyMetres();
      err.print(
          ((decides
                      ? "Inside the brackets is inside the limit of %s mm for sure: one value may be off"
                          + " %s mm."
                      : "One value of this meter cannot decide the limit of %s mm: it may be off %s mm.")
                  + "%n")
              .formatted(millimetres(live.limitMetres()), millimetres(live.uncertaintyMetres())));
    }
  }

  private static String millimetres(double metres) {
    return LengthDisplay.decimal(metres * 1000, 1);
  }

  /** Every value that comes is shown; it is recorded only when it is confirmed. */
  @Override
  public void held(GuideState.Question question) {
    String value =
        (question.delivered().valueText() + " " + question.delivered().unitText()).strip();
    if (!live.isBounded()) {
      err.println("  " + value);
      return;
    }
    double deviation = live.deviationMetres(question.delivered().valueSi());
    boolean inside = live.isInside(deviation);
    err.print(
        "  %s %s mm  %s  %s%s%n"
            .formatted(
                new LimitBar(live.limitMetres(), live.uncertaintyMetres()).text(deviation),
                (deviation > 0 ? "+" : "") + millimetres(deviation),
                inside ? "INSIDE" : "outside or too close to call",
                value,
                inside && tones ? "\u0007" : ""));
  }

  @Override
  public void recorded(ReadingEntry reading) {
    err.print(
        "  recorded %s %s for %s%n".formatted(reading.value(), reading.unit(), reading.target()));
  }

  @Override
  public void withdrawn(ReadingEntry reading) {
    err.print(
        "  withdrawn %s %s for %s%n".formatted(reading.value(), reading.unit(), reading.target()));
  }

  @Override
  public void waiting(int count, String why) {
    err.print("  NOT STORED YET: %d wait(s). %s%n".formatted(count, why));
  }

  @Override
  public void captureEnded(String why) {
    err.println("  THE RAW BYTES ARE NOT KEPT: " + why);
  }

  @Override
  public void captureGoesOn() {
    err.println("  the raw bytes are kept again; those since then are missing");
  }

  @Override
  public void drained() {
    err.println("  what waited is stored now");
  }

  @Override
  public void putAside(String why) {
    err.println("  put aside: " + why);
  }

  @Override
  public void lost(LinkLostException loss, int droppedByteCount) {
    err.println("  " + loss.getMessage() + " It is opened again as soon as it is there.");
  }

  @Override
  public void link(String link, LinkState state, String sentence) {
    err.println("  " + sentence);
  }
}
