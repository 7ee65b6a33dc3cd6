package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireName;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Tilts read with one or more meters, some targets on two faces and some on one. A target read on
 * both faces shows the meter's zero error, and so corrects those read on one face with the same
 * meter: the zero error is a common part of all readings.
 *
 * @param readings with distinct observation ids
 */
public record TiltSession(List<TiltReading> readings) {
  public TiltSession {
    readings = List.copyOf(readings);
    requireDistinct("tilt readings", readings, reading -> reading.observation().id());
    readings.forEach(r -> requireName("target of tilt reading", r.observation().id(), r.target()));
  }

  /** Adjusts all readings together; always possible. */
  public AdjustedTilts adjust() {
    List<String> targets = readings.stream().map(TiltReading::target).distinct().toList();
    List<ObservationEquation> equations = new ArrayList<>();
    for (TiltReading reading : readings) {
      equations.add(
          new ObservationEquation(
              reading.observation(), Map.of(reading.target(), (double) reading.face().sign()), 0));
    }
    Fit fit =
        LeastSquares.adjust(new LinearModel(targets, equations))
            .complete()
            .orElseThrow(() -> new AssertionError("every target has a reading"));
    return new AdjustedTilts(targets, fit);
  }
}
