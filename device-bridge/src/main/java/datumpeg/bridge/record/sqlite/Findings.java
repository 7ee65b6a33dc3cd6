package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.Finding;
import datumpeg.bridge.record.Finding.Trouble;
import datumpeg.bridge.record.Verification;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Gathers findings, up to as many as anyone would read. One thread. */
final class Findings {
  private final List<Finding> list = new ArrayList<>();
  private long count;

  void addFile(String sentence) {
    add(new Finding(Trouble.DAMAGED_FILE, "", 0, 0, Optional.empty(), sentence));
  }

  void addMissing(String origin, long first, long last, String evidence) {
    String rows = first == last ? "Row " + first + " is" : "Rows " + first + " to " + last + " are";
    add(
        new Finding(
            Trouble.MISSING,
            origin,
            first,
            last,
            Optional.empty(),
            String.format("%s missing from chain %s: %s.", rows, origin, evidence)));
  }

  /**
   * @param what what is wrong with the row, as the end of a sentence that names it
   */
  void add(Trouble trouble, CheckedRow row, String what) {
    Finding.Row identity = row.identity();
    String sentence =
        String.format(
            "Row %d of chain %s (row_id %d, %s of job %s, stored %s) %s.",
            row.sequence(),
            row.origin(),
            identity.rowId(),
            identity.kind(),
            identity.job().isEmpty() ? "(none)" : identity.job(),
            identity.at(),
            what);
    add(
        new Finding(
            trouble,
            row.origin(),
            row.sequence(),
            row.sequence(),
            Optional.of(identity),
            sentence));
  }

  private void add(Finding finding) {
    count++;
    if (!isFull()) {
      list.add(finding);
    }
  }

  boolean isFull() {
    return list.size() >= Verification.MOST_FINDINGS;
  }

  List<Finding> list() {
    return list;
  }

  long count() {
    return count;
  }
}
