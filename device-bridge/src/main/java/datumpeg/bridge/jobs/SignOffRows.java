package datumpeg.bridge.jobs;

import datumpeg.analysis.signoff.Acceptance;
import datumpeg.analysis.signoff.Signature;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.AcceptanceEntry;
import datumpeg.bridge.record.entry.SignatureEntry;

/** Rows of signatures and acceptances as the analysis wants them. */
final class SignOffRows {
  private SignOffRows() {}

  static Signature signature(StoredEntry<SignatureEntry> stored) {
    SignatureEntry entry = stored.entry();
    return new Signature(entry.stage(), entry.by(), entry.statement(), stored.at());
  }

  static Acceptance acceptance(StoredEntry<AcceptanceEntry> stored) {
    AcceptanceEntry entry = stored.entry();
    return new Acceptance(
        entry.stage(),
        entry.item(),
        entry.found(),
        entry.by(),
        entry.reference(),
        entry.why(),
        stored.at());
  }
}
