package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.measure.SessionShot.LinkStand;
import datumpeg.desktop.text.Standing;
import java.util.List;
import java.util.Optional;

/**
 * All that the measuring screen shows.
 *
 * @param jobs that can be chosen: id and name
 * @param job the id of the one chosen; empty for none
 * @param choices what can be measured of it; empty while that is being looked up
 * @param stage the stage chosen
 * @param listening for Bluetooth LE meters
 * @param goOn what the last session can go on with, in words; empty for none
 * @param sentence what is to be said before a session begins, or how the last one ended
 * @param running the session, while one runs
 * @param elsewhere what other screens say of the session; empty while none runs or this is shown
 */
record MeasurePage(
    List<JobChoice> jobs,
    String job,
    Optional<Sessions.Choices> choices,
    String stage,
    Listening listening,
    String goOn,
    String sentence,
    Optional<Running> running,
    String elsewhere) {
  MeasurePage {
    jobs = List.copyOf(jobs);
  }

  /**
   * Listening for Bluetooth LE meters.
   *
   * @param done how much of it, from 0 to 1
   * @param sentence how it stands; empty before the first time
   * @param heard the meters to choose from
   */
  record Listening(boolean going, double done, String sentence, List<Sessions.Port> heard) {
    static final Listening NEVER = new Listening(false, 0, "", List.of());

    Listening {
      heard = List.copyOf(heard);
    }
  }

  /** A job that can be chosen. */
  record JobChoice(String id, String name) {}

  /**
   * A session as it is shown.
   *
   * @param title job and stage
   * @param instruction what to do, in one line
   * @param expected what the plan says
   * @param big the value to be read from afar: the one held, else the one taken last
   * @param bigWords what that value is
   * @param bigShort the same in a few words, where there is little room
   * @param bigStands how it stands
   * @param next what happens next
   * @param question what must be answered; empty when nothing is held
   * @param choices what a held value may be a reading of, where there are several
   * @param said what happened last
   * @param trouble what is not as it should be; may be empty
   * @param typed what was typed of a value so far
   * @param sketch where the target lies; empty where nothing is asked for
   * @param bar the watched value between its limits; empty unless one is watched
   * @param targets all targets of the stage to choose from; empty unless they are asked for
   * @param bytes the raw bytes, one row a line
   * @param acts what can be done
   */
  record Running(
      String title,
      String instruction,
      String expected,
      String big,
      String bigWords,
      String bigShort,
      Stands bigStands,
      String next,
      String question,
      List<String> choices,
      String said,
      String trouble,
      String typed,
      Optional<TargetSketch> sketch,
      Optional<Bar> bar,
      List<LinkStand> links,
      Optional<TargetChoices> targets,
      String bytes,
      List<ActButton> acts) {
    Running {
      choices = List.copyOf(choices);
      links = List.copyOf(links);
      acts = List.copyOf(acts);
    }
  }

  /**
   * The targets of the stage.
   *
   * @param heading what to do with them, or why there are none
   */
  record TargetChoices(String heading, List<TargetChoice> choices) {
    TargetChoices {
      choices = List.copyOf(choices);
    }
  }

  /**
   * A target that can be gone to.
   *
   * @param how it stands, in words, with the newest value
   */
  record TargetChoice(Wanted wanted, Standing standing, String instruction, String how) {}

  /** How the big value stands. */
  enum Stands {
    NONE,
    RECORDED,
    HELD,
    INSIDE,
    OUTSIDE
  }

  /**
   * A button and its key.
   *
   * @param possible whether it would do anything now
   */
  record ActButton(Act act, String text, boolean possible) {}

  /**
   * A live value between its limits, in millimetres.
   *
   * @param limitMillimetres how far it may go either way
   * @param insideMillimetres so far it is inside for sure
   * @param deviationMillimetres where it stands; empty before the first value
   * @param words the same in words
   * @param shortWords in a few words, where there is little room
   * @param leftWords which way the left end is; empty where that goes without saying
   * @param rightWords the same of the right end
   * @param isMirrored whether what is positive lies to the left, as in the drawing beside it
   */
  record Bar(
      double limitMillimetres,
      double insideMillimetres,
      Optional<Double> deviationMillimetres,
      String words,
      String shortWords,
      String leftWords,
      String rightWords,
      boolean isMirrored) {}
}
