package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.adjust.DistanceNetwork;
import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.LeastSquares;
import datumpeg.analysis.adjust.LevelNetwork;
import datumpeg.analysis.adjust.LevelReading;
import datumpeg.analysis.adjust.LevelSetUp;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.LinearModel;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.adjust.ObservationEquation;
import datumpeg.analysis.adjust.TiltReading;
import datumpeg.analysis.adjust.TiltSession;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The networks of room {@code adjust}, ready for a slip search. */
public final class SlipNetworks {
  /** Marks the observations of readings that were not taken. */
  static final String FURTHER = "further ";

  private SlipNetworks() {}

  /**
   * Distances in a plane; candidates are all pairs of its points that a suspect's end belongs to.
   */
  public static SlipNetwork of(DistanceNetwork network) {
    return new DistanceSlips(network);
  }

  /** Any linear model, such as a row of frames. */
  public static SlipNetwork of(LinearModel model) {
    return new Linear(model);
  }

  /** Differences along a line. */
  public static SlipNetwork of(LineNetwork network) {
    return new Line(network);
  }

  /** Levels from one or more set-ups. */
  public static SlipNetwork of(LevelNetwork network) {
    return new Levels(network);
  }

  /** Tilts on one or two faces. */
  public static SlipNetwork of(TiltSession session) {
    return new Tilts(session);
  }

  /** The smallest independent part in use: how well one more reading would be read. */
  static double best(List<Observation> observations) {
    return observations.stream()
        .mapToDouble(Observation::independentStandardUncertainty)
        .min()
        .orElse(1);
  }

  /** So rough that the candidates together change nothing. */
  static double rough(List<Observation> observations) {
    return 100 * best(observations);
  }

  private record Linear(LinearModel model) implements SlipNetwork {
    @Override
    public List<Observation> observations() {
      return model.observations();
    }

    @Override
    public Optional<Fit> fit(List<Observation> changed) {
      List<ObservationEquation> equations = new ArrayList<>();
      for (int i = 0; i < changed.size(); i++) {
        ObservationEquation equation = model.equations().get(i);
        equations.add(
            new ObservationEquation(changed.get(i), equation.coefficients(), equation.constant()));
      }
      return LeastSquares.adjust(new LinearModel(model.unknowns(), equations)).complete();
    }

    @Override
    public Optional<FurtherReadings> further(Set<String> suspects) {
      List<ObservationEquation> equations = new ArrayList<>(model.equations());
      List<FurtherReadings.Candidate> candidates = new ArrayList<>();
      double rough = rough(observations());
      for (ObservationEquation equation : model.equations()) {
        String id = equation.observation().id();
        if (suspects.contains(id)) {
          candidates.add(new FurtherReadings.Candidate(FURTHER + id, id, true));
          equations.add(
              new ObservationEquation(
                  Observation.independent(FURTHER + id, 0, rough),
                  equation.coefficients(),
                  equation.constant()));
        }
      }
      return LeastSquares.adjust(new LinearModel(model.unknowns(), equations))
          .complete()
          .map(fit -> new FurtherReadings(candidates, fit, rough, best(observations())));
    }
  }

  private record Line(LineNetwork network) implements SlipNetwork {
    @Override
    public List<Observation> observations() {
      return network.differences().stream().map(LineDifference::observation).toList();
    }

    @Override
    public Optional<Fit> fit(List<Observation> changed) {
      List<LineDifference> differences = new ArrayList<>();
      for (int i = 0; i < changed.size(); i++) {
        differences.add(network.differences().get(i).with(changed.get(i)));
      }
      return Optional.of(new LineNetwork(network.stations(), differences).adjust().fit());
    }

    @Override
    public Optional<FurtherReadings> further(Set<String> suspects) {
      double rough = rough(observations());
      List<String> ends = new ArrayList<>();
      for (LineDifference taken : network.differences()) {
        if (suspects.contains(taken.observation().id())) {
          ends.add(taken.from());
          ends.add(taken.to());
        }
      }
      List<FurtherReadings.Candidate> candidates = new ArrayList<>();
      List<LineDifference> differences = new ArrayList<>(network.differences());
      for (int i = 0; i < network.stations().size(); i++) {
        for (int j = i + 1; j < network.stations().size(); j++) {
          String from = network.stations().get(i);
          String to = network.stations().get(j);
          if (ends.contains(from) && ends.contains(to)) {
            String id = FURTHER + from + "-" + to;
            candidates.add(new FurtherReadings.Candidate(id, from + "-" + to, taken(from, to)));
            differences.add(new LineDifference(from, to, Observation.independent(id, 0, rough)));
          }
        }
      }
      Fit fit = new LineNetwork(network.stations(), differences).adjust().fit();
      return Optional.of(new FurtherReadings(candidates, fit, rough, best(observations())));
    }

    private boolean taken(String from, String to) {
      return network.differences().stream()
          .anyMatch(
              d ->
                  (d.from().equals(from) && d.to().equals(to))
                      || (d.from().equals(to) && d.to().equals(from)));
    }
  }

  private record Levels(LevelNetwork network) implements SlipNetwork {
    @Override
    public List<Observation> observations() {
      return network.readings().stream().map(LevelReading::observation).toList();
    }

    @Override
    public Optional<Fit> fit(List<Observation> changed) {
      List<LevelReading> readings = new ArrayList<>();
      for (int i = 0; i < changed.size(); i++) {
        LevelReading reading = network.readings().get(i);
        readings.add(new LevelReading(reading.setUp(), reading.point(), changed.get(i)));
      }
      return adjusted(readings);
    }

    private Optional<Fit> adjusted(List<LevelReading> readings) {
      return new LevelNetwork(network.points(), network.setUps(), readings)
          .adjust()
          .complete()
          .map(AdjustedLevels::fit);
    }

    /** The suspects' points from every set-up, read there already or not. */
    @Override
    public Optional<FurtherReadings> further(Set<String> suspects) {
      double rough = rough(observations());
      List<FurtherReadings.Candidate> candidates = new ArrayList<>();
      List<LevelReading> readings = new ArrayList<>(network.readings());
      List<String> points =
          network.readings().stream()
              .filter(reading -> suspects.contains(reading.observation().id()))
              .map(LevelReading::point)
              .distinct()
              .toList();
      for (String point : points) {
        for (LevelSetUp setUp : network.setUps()) {
          String id = FURTHER + point + " from " + setUp.id();
          boolean again =
              network.readings().stream()
                  .anyMatch(r -> r.point().equals(point) && r.setUp().equals(setUp.id()));
          candidates.add(new FurtherReadings.Candidate(id, point, again));
          readings.add(new LevelReading(setUp.id(), point, Observation.independent(id, 0, rough)));
        }
      }
      return adjusted(readings)
          .map(fit -> new FurtherReadings(candidates, fit, rough, best(observations())));
    }
  }

  private record Tilts(TiltSession session) implements SlipNetwork {
    @Override
    public List<Observation> observations() {
      return session.readings().stream().map(TiltReading::observation).toList();
    }

    @Override
    public Optional<Fit> fit(List<Observation> changed) {
      List<TiltReading> readings = new ArrayList<>();
      for (int i = 0; i < changed.size(); i++) {
        TiltReading reading = session.readings().get(i);
        readings.add(new TiltReading(reading.target(), reading.face(), changed.get(i)));
      }
      return Optional.of(new TiltSession(readings).adjust().fit());
    }

    /** The suspects' targets once more on the same face, with the meter's own zero error. */
    @Override
    public Optional<FurtherReadings> further(Set<String> suspects) {
      double rough = rough(observations());
      List<FurtherReadings.Candidate> candidates = new ArrayList<>();
      List<TiltReading> readings = new ArrayList<>(session.readings());
      for (TiltReading taken : session.readings()) {
        String id = FURTHER + taken.observation().id();
        if (suspects.contains(taken.observation().id())) {
          candidates.add(new FurtherReadings.Candidate(id, taken.target(), true));
          readings.add(
              new TiltReading(
                  taken.target(),
                  taken.face(),
                  new Observation(id, 0, rough, taken.observation().commonParts())));
        }
      }
      Fit fit = new TiltSession(readings).adjust().fit();
      return Optional.of(new FurtherReadings(candidates, fit, rough, best(observations())));
    }
  }
}
