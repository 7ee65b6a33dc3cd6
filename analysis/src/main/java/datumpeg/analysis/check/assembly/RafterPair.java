package datumpeg.analysis.check.assembly;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.RafterEnd;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The distance between the tips of a rafter pair, and the pitch that follows from it.
 *
 * <p>With rafters of length L the tips stand t = 2·L·cos θ apart, so at fixed length dt/dθ =
 * −2·L·sin θ, and the apex moves −½·cot θ for each unit of t. Between the bottom corners of square
 * ends of depth d a tape reads 2·d·sin θ less: such a reading, of {@code
 * tip.A2/bottom-tip.B2/bottom}, is brought to the tips. Without a rafter length the drawing's pitch
 * and tip distance give it.
 */
public final class RafterPair implements Check {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public RafterPair(Job job, OutcomeMaker outcomes) {

    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = stage.where(RafterPair::isPair);
    Optional<DirectValues> direct =
        DirectValues.of(used, stage, reading -> name(reading.target()), this::betweenTips);
    List<Outcome> found = new ArrayList<>();
    direct.ifPresent(
        values -> {
          for (int number : setOut.portalFrameNumbers()) {
            outcome(number, values, stage).ifPresent(found::add);
          }
        });
    return CheckResult.of(found, List.of(), used)
        .with(direct.map(DirectValues::tests).orElse(List.of()));
  }

  private static boolean isPair(Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && target.points().stream().allMatch(point -> point.feature().equals("tip"))
        && target.first().part().equals(target.second().part())
        && number(target.first()) == number(target.second());
  }

  private static int number(PointName tip) {
    return tip.gridMark().map(GridMark::number).orElse(0);
  }

  private static String name(Target target) {
    return Integer.toString(number(target.first()));
  }

  private double betweenTips(Reading reading) {
    boolean bottom = reading.target().first().part().equals("bottom");
    return reading.valueSi() + (bottom ? setOut.bottomCornerShortfallMetres() : 0);
  }

  private Optional<Outcome> outcome(int number, DirectValues values, StageReadings stage) {
    String name = Integer.toString(number);
    if (!values.values().contains(name)) {
      return Optional.empty();
    }
    Estimate tips = values.values().estimate(name);
    List<Reading> readings = values.readingsOf(List.of(name));
    OptionalDouble nominal = setOut.tipDistanceMetres();
    Outcome bare =
        outcomes.signed(
            "rafter-pair",
            name,
            nominal,
            stage.atReference(tips, tips.value()),
            nominal.orElse(tips.value()),
            stage.evidence(readings));
    return Optional.of(
        bare.withAside(aside(tips, nominal))
            .withFurtherAside(stage.temperatureWords(tips.value())));
  }

  /** Which corners are meant, and what the tip distance makes of pitch and apex. */
  private String aside(Estimate tips, OptionalDouble nominal) {
    String corners = corners();
    OptionalDouble length = rafterLengthMetres(nominal);
    double cosine = tips.value() / (2 * length.orElse(0));
    if (length.isEmpty() || !(cosine < 1)) {
      return corners;
    }
    double pitch = StrictMath.acos(cosine);
    double perTip = SetOut.apexMovePerTipDistance(pitch);
    double rise = length.getAsDouble() * StrictMath.sin(pitch);
    double planned = nominal.orElse(tips.value()) / 2;
    double designRise =
        Math.sqrt(Math.max(0, length.getAsDouble() * length.getAsDouble() - planned * planned));
    return corners
        + "; pitch "
        + LengthDisplay.decimal(StrictMath.toDegrees(pitch), 2)
        + " deg, apex "
        + Millimetres.signed(rise - designRise)
        + "; each mm wider at the tips moves the apex "
        + LengthDisplay.signed(perTip, 2)
        + " mm, each mm up at the apex moves the tips "
        + LengthDisplay.signed(1 / perTip, 2)
        + " mm";
  }

  private String corners() {
    return setOut.building().sections().rafterEnd() == RafterEnd.SQUARE
        ? "between the top corners of the square ends; between the bottom corners "
            + Millimetres.of(setOut.bottomCornerShortfallMetres())
            + " less"
        : "between the plumb ends, top or bottom";
  }

  private OptionalDouble rafterLengthMetres(OptionalDouble nominal) {
    OptionalDouble drawn = setOut.building().sections().rafterLengthMetres();
    if (drawn.isPresent() || nominal.isEmpty() || setOut.building().pitchRadians() == 0) {
      return drawn;
    }
    return OptionalDouble.of(
        nominal.getAsDouble() / (2 * StrictMath.cos(setOut.building().pitchRadians())));
  }
}
