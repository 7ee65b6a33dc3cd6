package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.TiltFace;
import datumpeg.analysis.adjust.TiltReading;
import datumpeg.analysis.adjust.TiltSession;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Slips planted in the tilts of six columns, read on two faces. */
final class PlantedTilts {
  private static final double TILT_INDEPENDENT = StrictMath.toRadians(0.02);
  private static final double TILT_COMMON = StrictMath.toRadians(0.1);

  private PlantedTilts() {}

  /** Six columns on two faces each with one meter; leans of some tenths of a degree. */
  static List<SlipReading> tilts(NormalDraws draws) {
    List<SlipReading> readings = new ArrayList<>();
    double zero = draws.next(TILT_COMMON);
    for (int i = 0; i < 6; i++) {
      double lean = StrictMath.toRadians(0.3) * (i % 2 == 0 ? 1 : -1) + draws.next(0.001);
      String column = "column." + (i < 3 ? "A" : "B") + (i % 3 + 1) + "/across";
      for (int face = 1; face <= 2; face++) {
        double value = (face == 1 ? lean : -lean) + zero + draws.next(TILT_INDEPENDENT);
        readings.add(
            PlantedSlips.reading(
                "t%02d".formatted(readings.size() + 1),
                Target.parse(MeasuredQuantity.TILT, column),
                value,
                face,
                "tilt"));
      }
    }
    return readings;
  }

  static PlantedSlips.Planted oneTilt(long seed, SplittableRandom random, SlipKind kind) {
    NormalDraws draws = new NormalDraws(seed);
    List<SlipReading> readings = tilts(draws);
    int at = random.nextInt(readings.size());
    SlipReading before = readings.get(at);
    double zero = kind == SlipKind.FACE ? meanOfFaces(readings, at) : 0;
    readings.set(at, PlantedSlips.with(before, 2 * zero - before.value()));
    TiltSession session =
        new TiltSession(
            readings.stream()
                .map(
                    r ->
                        new TiltReading(
                            r.target().text(),
                            r.face() == 1 ? TiltFace.ONE : TiltFace.TWO,
                            PlantedSlips.observation(r, TILT_INDEPENDENT, TILT_COMMON)))
                .toList());
    return new PlantedSlips.Planted(
        SlipNetworks.of(session), readings, kind, List.of(readings.get(at).id()));
  }

  static double meanOfFaces(List<SlipReading> readings, int at) {
    int partner = at % 2 == 0 ? at + 1 : at - 1;
    return (readings.get(at).value() + readings.get(partner).value()) / 2;
  }

  static PlantedSlips.Planted signOfLean(long seed, SplittableRandom random) {
    return oneTilt(seed, random, SlipKind.SIGN);
  }

  static PlantedSlips.Planted faceMistaken(long seed, SplittableRandom random) {
    return oneTilt(seed, random, SlipKind.FACE);
  }
}
