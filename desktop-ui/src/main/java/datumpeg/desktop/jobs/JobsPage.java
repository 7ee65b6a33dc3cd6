package datumpeg.desktop.jobs;

import java.util.List;

/**
 * All that the list of jobs shows.
 *
 * @param heading over the list
 * @param sentence why the list is empty; empty when it is not
 * @param crews of all jobs, to choose from, as the next two
 */
record JobsPage(
    String heading,
    String sentence,
    List<JobCard> cards,
    List<String> crews,
    List<String> sites,
    List<String> slabLayers) {
  JobsPage {
    crews = List.copyOf(crews);
    sites = List.copyOf(sites);
    slabLayers = List.copyOf(slabLayers);
    cards = List.copyOf(cards);
  }
}
