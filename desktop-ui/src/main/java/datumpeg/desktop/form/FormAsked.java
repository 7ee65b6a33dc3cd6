package datumpeg.desktop.form;

import java.util.Set;

/**
 * What the page is made of. Immutable.
 *
 * @param jobs the jobs of the record, as the command line knows them
 * @param filled how often the form was filled in by other means than typing: the fields show the
 *     draft's texts anew when it changes
 * @param aside the form that was put aside for this one
 */
record FormAsked(FormState state, FormState aside, Set<String> jobs, int filled) {
  FormAsked {
    jobs = Set.copyOf(jobs);
  }

  FormAsked with(FormState newState) {
    return new FormAsked(newState, aside, jobs, filled);
  }

  FormAsked with(Set<String> newJobs) {
    return new FormAsked(state, aside, newJobs, filled);
  }

  FormAsked filledWith(FormState newState) {
    return new FormAsked(newState, aside, jobs, filled + 1);
  }

  FormAsked aside(FormState newAside) {
    return new FormAsked(state, newAside, jobs, filled);
  }
}
