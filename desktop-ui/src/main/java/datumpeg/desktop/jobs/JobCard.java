package datumpeg.desktop.jobs;

import java.util.List;

/**
 * A job in the list.
 *
 * @param id as the command line knows it
 * @param title the job's name, or its id
 * @param particulars id, site, crew, when last read, in one line
 * @param sentence why there are no stages to show; empty when there are
 * @param stages in the order of the work
 */
record JobCard(
    String id, String title, String particulars, String sentence, List<StageTile> stages) {
  JobCard {
    stages = List.copyOf(stages);
  }
}
