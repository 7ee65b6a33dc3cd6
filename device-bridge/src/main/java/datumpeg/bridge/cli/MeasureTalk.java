package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.collect.SessionWatcher;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.PrintStream;

/** Says in plain lines what a measuring session does. */
final class MeasureTalk implements SessionWatcher {
  private final PrintStream err;

  MeasureTalk(PrintStream err) {
    this.err = err;
  }

  @Override
  public void asking(Wanted wanted, int leftAfterThis) {
    err.printf(
        "Measure %s %s%s%s  (%d more after it)%n",
        wanted.target().quantity().text(),
        wanted.target().text(),
        wanted.face() == 0 ? "" : ", face " + wanted.face(),
        wanted.expectedSi().isPresent() ? ", plan " + expected(wanted) : "",
        leftAfterThis);
  }

  private static String expected(Wanted wanted) {
    double si = wanted.expectedSi().orElse(0);
    return wanted.target().quantity() == MeasuredQuantity.TILT
        ? LengthDisplay.decimal(StrictMath.toDegrees(si), 2) + " deg"
        : LengthDisplay.decimal(si, 3) + " m";
  }

  @Override
  public void recorded(ReadingEntry reading) {
    err.printf("  recorded %s %s for %s%n", reading.value(), reading.unit(), reading.target());
  }

  @Override
  public void withdrawn(ReadingEntry reading) {
    err.printf("  withdrawn %s %s for %s%n", reading.value(), reading.unit(), reading.target());
  }

  @Override
  public void putAside(String why) {
    err.println("  put aside: " + why);
  }

  @Override
  public void lost(LinkLostException loss, int droppedByteCount) {
    err.println(
        "  "
            + loss.getMessage()
            + (droppedByteCount > 0
                ? " " + droppedByteCount + " byte(s) of an unfinished reading were dropped."
                : ""));
  }
}
