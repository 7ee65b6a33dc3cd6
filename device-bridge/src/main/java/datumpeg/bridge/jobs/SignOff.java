package datumpeg.bridge.jobs;

import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.SignOffItem;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.AcceptanceEntry;
import datumpeg.bridge.record.entry.SignatureEntry;
import java.util.List;
import java.util.stream.Collectors;

/** Signs stages and accepts items of a job in a record, by the rules of hold points. */
public final class SignOff {
  private final SiteRecord record;
  private final SessionStart start;

  public SignOff(SiteRecord record, SessionStart start) {
    this.record = record;
    this.start = start;
  }

  /**
   * Closes the hold point of a stage.
   *
   * @return the hold point as it then stands
   * @throws InputException if the job has no such stage, an item is open, or it is signed already
   */
  public HoldPoint sign(String jobName, String stageId, String by) {
    requireText(by, "a name");
    StoredJob stored = StoredJob.load(record, jobName);
    Stage stage = stage(stored, stageId);
    HoldPoint point = stored.holdPoint(stage, stored.findings());
    requireSignable(point);
    append(stored, new SignatureEntry(stageId, by.strip(), point.statement()));
    StoredJob after = StoredJob.load(record, jobName);
    return after.holdPoint(stage, after.findings());
  }

  /**
   * Takes an open item as it is.
   *
   * @param stageId empty for the latest stage at which the item is open
   * @param item its key, such as {@code slab-square A1}
   * @return the hold point of its stage as it then stands
   * @throws InputException if there is no such open item, or a name, a reference or a reason is
   *     missing
   */
  public HoldPoint accept(
      String jobName, String stageId, String item, String by, String reference, String why) {
    requireText(by, "a name");
    requireText(reference, "the engineer's reference");
    requireText(why, "a reason");
    StoredJob stored = StoredJob.load(record, jobName);
    HoldPoint point = pointOf(stored, stageId, item);
    List<AcceptanceEntry> entries =
        point.open().stream()
            .filter(open -> open.key().equals(item))
            .map(
                open ->
                    new AcceptanceEntry(
                        point.stage().id(),
                        item,
                        open.found(),
                        by.strip(),
                        reference.strip(),
                        why.strip()))
            .toList();
    try (RecordSession session = record.openSession(start)) {
      session.appendAll(stored.key(), entries);
    }
    StoredJob after = StoredJob.load(record, jobName);
    return after.holdPoint(point.stage(), after.findings());
  }

  private void append(StoredJob stored, SignatureEntry entry) {
    try (RecordSession session = record.openSession(start)) {
      session.append(stored.key(), entry);
    }
  }

  private static HoldPoint pointOf(StoredJob stored, String stageId, String item) {
    Findings findings = stored.findings();
    List<HoldPoint> points =
        stored.job().stages().stream()
            .filter(stage -> stageId.isEmpty() || stage.id().equals(stageId))
            .map(stage -> stored.holdPoint(stage, findings))
            .toList();
    if (points.isEmpty()) {
      throw noStage(stored, stageId);
    }
    for (int i = points.size() - 1; i >= 0; i--) {
      if (points.get(i).open().stream().anyMatch(open -> open.key().equals(item))) {
        return points.get(i);
      }
    }
    throw noOpenItem(stored, points, item);
  }

  private static InputException noOpenItem(StoredJob stored, List<HoldPoint> points, String item) {
    List<String> open =
        points.stream()
            .flatMap(point -> point.open().stream())
            .map(SignOffItem::key)
            .distinct()
            .toList();
    boolean closed = points.stream().anyMatch(point -> point.item(item).isPresent());
    return new InputException(
        closed
            ? "'" + item + "' of " + stored.key() + " is closed already; nothing is to be accepted."
            : "The job "
                + stored.key()
                + " has no open item '"
                + item
                + "'; "
                + (open.isEmpty() ? "none is open" : Nearest.hint(item, open))
                + ".");
  }

  private static void requireSignable(HoldPoint point) {
    String stage = point.stage().id();
    switch (point.state()) {
      case NOT_BEGUN ->
          throw new InputException(
              "Stage " + stage + " cannot be signed: nothing was measured or answered at it yet.");
      case OPEN ->
          throw new InputException(
              "Stage "
                  + stage
                  + " cannot be signed: "
                  + point.open().size()
                  + " of "
                  + point.items().size()
                  + " items are open. "
                  + point.open().stream()
                      .map(item -> item.key() + ": " + item.found())
                      .collect(Collectors.joining("; ")));
      case SIGNED ->
          throw new InputException(
              "Stage "
                  + stage
                  + " was signed already by "
                  + point.signature().map(one -> one.by()).orElse("")
                  + ", and nothing has changed since.");
      case NONE, TO_SIGN -> {}
    }
  }

  private static Stage stage(StoredJob stored, String stageId) {
    return stored.job().stage(stageId).orElseThrow(() -> noStage(stored, stageId));
  }

  private static InputException noStage(StoredJob stored, String stageId) {
    List<String> ids = stored.job().stages().stream().map(Stage::id).toList();
    return new InputException(
        "The job "
            + stored.key()
            + " has no stage '"
            + stageId
            + "'; "
            + Nearest.hint(stageId, ids)
            + ".");
  }

  private static void requireText(String text, String what) {
    if (text.isBlank()) {
      throw new InputException("A sign-off needs " + what + ", found a blank text.");
    }
  }
}
