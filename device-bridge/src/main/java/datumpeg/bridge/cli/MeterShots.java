package datumpeg.bridge.cli;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.meter.learn.Shown;
import java.io.PrintStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Asks for one reading after another, and takes each from a meter's link. One thread. */
final class MeterShots {
  private static final long LOOK_MILLIS = 500;

  private final PrintStream err;
  private final LinkAddress address;
  private final MeterStream stream;
  private final HeardBytes heard = new HeardBytes();
  private final Duration patience;

  /**
   * @param patience for each reading
   */
  MeterShots(
      DatumpegCommand program, LinkAddress address, MeterProfile profile, Duration patience) {
    this.err = program.console().err();
    this.address = address;
    this.stream = new MeterStream(profile);
    this.patience = patience;
  }

  /**
   * A reading for each label, as the meter wrote it, with its unit.
   *
   * @throws OuterWorldException if none comes in time
   */
  List<String> take(DatumpegCommand program, List<String> labels) throws InterruptedException {
    List<String> taken = new ArrayList<>();
    try (Link link = program.links().open(address, stream.profile(), LinkClock.system(), heard)) {
      for (String label : labels) {
        err.println("Take the reading '" + label + "' on " + link.address().text() + ".");
        taken.add(next(label));
      }
    }
    return taken;
  }

  /** The last value of what comes at once: a meter may show others on the way to it. */
  private String next(String label) throws InterruptedException {
    long deadline = System.nanoTime() + patience.toNanos();
    while (System.nanoTime() < deadline) {
      String value = lastValue(heard.take(LOOK_MILLIS));
      if (!value.isEmpty()) {
        err.println("  " + label + " = " + value);
        return value;
      }
    }
    throw new OuterWorldException(
        "No reading '"
            + label
            + "' came from "
            + address.text()
            + " within "
            + patience.toSeconds()
            + " s; nothing was stored. 'meters watch' shows what comes.");
  }

  private String lastValue(List<Shown.Piece> pieces) {
    String last = "";
    for (Shown.Piece piece : pieces) {
      for (MeterStream.Message message : stream.accept(piece.bytes(), piece.channel())) {
        if (message.decoded() instanceof Measured sent) {
          Measured measured = stream.profile().read(sent);
          last = measured.valueText() + " " + measured.unit().symbol();
        } else if (message.decoded() instanceof NotAReading other) {
          err.println("  not a reading: " + other.detail());
        }
      }
    }
    return last;
  }
}
