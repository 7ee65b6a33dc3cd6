package datumpeg.desktop.jobs;

import java.util.List;

/**
 * All that the list of jobs shows.
 *
 * @param heading over the list
 * @param sentence why the list is empty; empty when it is not
 */
record JobsPage(String heading, String sentence, List<JobCard> cards) {
  JobsPage {
    cards = List.copyOf(cards);
  }
}
