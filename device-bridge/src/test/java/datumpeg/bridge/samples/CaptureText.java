package datumpeg.bridge.samples;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.bridge.emulate.CaptureComposer;
import datumpeg.bridge.emulate.Dialect;
import datumpeg.bridge.emulate.EmulatedMeter.Chatter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/** A visit's readings as the bytes its meters sent. */
final class CaptureText {
  private CaptureText() {}

  /**
   * The capture's text.
   *
   * @param dialects how each meter of the visit speaks, by the job's name for it; tilt meters say
   *     nothing but values, the others now and then something else
   */
  static String of(String job, Visit visit, long seed, Map<String, Dialect> dialects) {
    CaptureComposer composer = new CaptureComposer(job, visit.stage(), seed);
    Map<String, String> links = new LinkedHashMap<>();
    dialects.forEach(
        (meter, dialect) -> {
          String link = "L" + (links.size() + 1);
          Chatter chatter = dialect == Dialect.DEGREES ? Chatter.SILENT : Chatter.TALKATIVE;
          composer.meter(link, "serial:/dev/ttyUSB" + links.size(), meter, dialect, chatter);
          links.put(meter, link);
        });
    for (Reading reading : visit.readings()) {
      boolean faces = reading.target().quantity() == MeasuredQuantity.TILT;
      composer.reading(
          Objects.requireNonNull(links.get(reading.meter())),
          reading.target().text(),
          faces ? reading.face() : null,
          reading.valueSi(),
          reading.at());
    }
    return new String(composer.compose().toArray(), StandardCharsets.UTF_8);
  }
}
