package datumpeg.desktop.measure;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ble.BleBackend;
import datumpeg.bridge.link.ble.BleSighting;
import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.background.OneWork;
import datumpeg.desktop.measure.Sessions.Heard;
import datumpeg.desktop.measure.Sessions.Port;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Listens for Bluetooth LE meters for a few seconds, piece by piece, so that it can be followed and
 * stopped. It connects to none.
 *
 * <p>Thread-safe.
 */
final class MeterListening {
  /** Short enough to be stopped at, long enough for a meter that advertises once a second. */
  private static final Duration PIECE = Duration.ofSeconds(2);

  private static final int PIECES = 4;

  private final BleBackend backend;
  private final NewestValue<Heard> told;
  private final Function<Throwable, String> sentence;
  private final OneWork work;
  private final Map<String, Port> meters = new TreeMap<>();
  private volatile boolean stopped;

  /**
   * @param told is given what was heard so far, after each piece
   * @param sentence what is said of trouble
   */
  MeterListening(
      BleBackend backend, NewestValue<Heard> told, Function<Throwable, String> sentence) {
    this.backend = backend;
    this.told = told;
    this.sentence = sentence;
    this.work =
        new OneWork("listen for meters", this::run, trouble -> end(sentence.apply(trouble)));
  }

  void start() {
    work.start();
  }

  /** No piece is begun any more, and nothing is told. */
  void stop() {
    stopped = true;
  }

  private void run() {
    for (int piece = 1; piece <= PIECES && !stopped; piece++) {
      try {
        backend.discover("", PIECE).forEach(this::heard);
      } catch (LinkUnavailableException unavailable) {
        end(sentence.apply(unavailable));
        return;
      }
      tell(new Heard(List.copyOf(meters.values()), piece * PIECE.toSeconds(), seconds(), ""));
    }
  }

  private static long seconds() {
    return PIECES * PIECE.toSeconds();
  }

  private void heard(BleSighting sighting) {
    String address = "ble:" + sighting.address();
    String strength =
        sighting.strengthDbm().isPresent() ? sighting.strengthDbm().getAsInt() + " dBm" : "";
    meters.put(address, new Port(address, (sighting.name() + " " + strength).strip()));
  }

  private void end(String trouble) {
    tell(new Heard(List.copyOf(meters.values()), seconds(), seconds(), trouble));
  }

  private void tell(Heard heard) {
    if (!stopped) {
      told.put(heard);
    }
  }
}
