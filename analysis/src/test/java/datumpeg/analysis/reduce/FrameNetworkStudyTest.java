package datumpeg.analysis.reduce;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.check.Network;
import datumpeg.analysis.job.Job;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The network of all frames on simulated surveys whose meters err as stated. */
class FrameNetworkStudyTest {
  private static final int SURVEYS = 120;

  /** s₀² is 1 on average and one sound survey in twenty fails at 5 %: the model is the site's. */
  @Test
  void soundSurveysFitTheFramesAsOftenAsTheTestSays() {
    Job job = SimulatedSurvey.job();
    double factor = 0;
    int doubted = 0;
    int freedom = 0;
    for (int seed = 0; seed < SURVEYS; seed++) {
      Network frames = frames(job, seed);
      factor += frames.varianceFactor().orElseThrow() / SURVEYS;
      doubted += frames.probability().orElseThrow() < 0.05 ? 1 : 0;
      freedom = frames.degreesOfFreedom();
    }
    assertEquals(1, factor, 4 * Math.sqrt(2.0 / freedom / SURVEYS));
    assertEquals(0.05 * SURVEYS, doubted, 4 * Math.sqrt(0.0475 * SURVEYS));
  }

  private static Network frames(Job job, long seed) {
    List<Network> networks =
        new Reduction(job, "")
            .reduce(SimulatedSurvey.draw(job, seed).readings(), List.of())
            .stage("survey")
            .orElseThrow()
            .networks();
    return networks.stream().filter(n -> n.name().equals("the frames")).findFirst().orElseThrow();
  }
}
