package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.bridge.jobfile.JobFileException;
import java.util.Map;
import java.util.Optional;

/**
 * A form as far as it is filled in. Immutable.
 *
 * @param job the job that is given another revision; empty for a new one
 * @param base the job file of that job as it is in the record; empty for a new one
 * @param file the job file that was imported, to be stored byte for byte if nothing in it is
 *     changed; empty for none
 */
record FormState(String job, String base, String file, JobDraft draft) {
  static final FormState EMPTY = new FormState("", "", "", JobDraft.empty());

  boolean isRevision() {
    return !job.isEmpty();
  }

  /** Whether there is anything in it that would be missed. */
  boolean isWorthKeeping() {
    return !draft.equals(JobDraft.empty()) && !text().equals(base);
  }

  FormState with(JobDraft newDraft) {
    return new FormState(job, base, file, newDraft);
  }

  /** The same entries, as another revision of a job whose file is this. */
  FormState against(String newJob, String newBase) {
    return new FormState(newJob, newBase, file, draft);
  }

  /** What is to be stored. */
  String text() {
    for (String asGiven : new String[] {file, base}) {
      if (!asGiven.isEmpty() && JobDraft.of(asGiven).equals(draft)) {
        return asGiven;
      }
    }
    return draft.toml();
  }

  /** What a settings file keeps of it, by names that begin with the prefix. */
  Map<String, String> kept(String prefix) {
    return Map.of(
        prefix + "job", job,
        prefix + "base", base,
        prefix + "file", file,
        prefix + "draft", draft.toml());
  }

  /** What was kept; empty if nothing was, or if somebody made it unreadable. */
  static Optional<FormState> ofKept(Map<String, String> kept, String prefix) {
    String draft = kept.getOrDefault(prefix + "draft", "");
    if (draft.isEmpty()) {
      return Optional.empty();
    }
    try {
      String base = kept.getOrDefault(prefix + "base", "");
      String file = kept.getOrDefault(prefix + "file", "");
      JobDraft.of(base);
      JobDraft.of(file);
      return Optional.of(
          new FormState(kept.getOrDefault(prefix + "job", ""), base, file, JobDraft.of(draft)));
    } catch (JobFileException e) {
      return Optional.empty();
    }
  }
}
