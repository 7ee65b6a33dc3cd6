package datumpeg.analysis.report;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.List;
import java.util.Optional;

/**
 * What the asker wants on the page.
 *
 * @param stage the one stage to tell of; empty for all that have readings
 * @param display the units lengths are shown in
 * @param recordHeads what to keep so that a later change of the record shows, a line each; may be
 *     empty
 * @param programVersion which version wrote the page
 * @param printedAt when it was written, as printed
 */
public record ReportOptions(
    Optional<String> stage,
    LengthDisplay display,
    List<String> recordHeads,
    String programVersion,
    String printedAt) {
  public ReportOptions {
    recordHeads = List.copyOf(recordHeads);
  }
}
