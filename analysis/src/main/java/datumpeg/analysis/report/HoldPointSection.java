package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.FeetInWords;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.signoff.Acceptance;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.HoldPoint.State;
import datumpeg.analysis.signoff.SignOffItem;
import datumpeg.analysis.signoff.SignOffItem.How;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Hold points: what is open, and by what the rest was closed. */
final class HoldPointSection {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Job job;
  private final LengthDisplay display;
  private final PhotoSection photos;

  HoldPointSection(Job job, LengthDisplay display, PhotoSection photos) {
    this.job = job;
    this.display = display;
    this.photos = photos;
  }

  void write(Markup page, List<HoldPoint> points) {
    List<HoldPoint> holding =
        points.stream().filter(point -> point.state() != State.NONE || hasPhotos(point)).toList();
    if (holding.isEmpty()) {
      return;
    }
    page.open("section", "class", "holds").element("h3", "Hold points");
    holding.stream().filter(this::isToldAlone).forEach(point -> write(page, point));
    List<String> notBegun =
        holding.stream()
            .filter(point -> !isToldAlone(point))
            .map(point -> point.stage().id())
            .toList();
    if (!notBegun.isEmpty()) {
      page.element(
          "p", "Open, as nothing was measured there yet: " + String.join(", ", notBegun) + ".");
    }
    page.close();
  }

  private boolean isToldAlone(HoldPoint point) {
    return point.state() != State.NOT_BEGUN || hasPhotos(point);
  }

  private boolean hasPhotos(HoldPoint point) {
    return photos.has(point.stage().id());
  }

  private void write(Markup page, HoldPoint point) {
    page.open("p").element("b", StageTitle.of(job, point.stage().id()) + ": ");
    page.words(sentence(point)).close();
    List<String> items = new ArrayList<>();
    point.open().forEach(item -> items.add("Open: " + told(item) + "."));
    point.items().stream()
        .filter(item -> item.how() == How.ACCEPTED)
        .forEach(item -> items.add(accepted(item)));
    point.items().stream()
        .filter(item -> item.how() == How.REWORKED)
        .forEach(item -> items.add("Closed by rework: " + told(item) + "."));
    if (!items.isEmpty()) {
      page.open("ul");
      items.forEach(item -> page.element("li", item));
      page.close();
    }
    closed(point).ifPresent(sentence -> page.element("p", sentence, "class", "facts"));
    photos.write(page, point.stage().id());
  }

  /** How the hold point of a stage stands, in a sentence. */
  static String sentence(HoldPoint point) {
    return switch (point.state()) {
      case NONE -> "it has no hold point.";
      case NOT_BEGUN -> "the hold point is open; nothing was measured at this stage yet.";
      case OPEN ->
          "the hold point is OPEN, "
              + point.open().size()
              + " of "
              + point.items().size()
              + " items are open. Do not go past this stage.";
      case TO_SIGN ->
          "the hold point is OPEN: every item is closed, nobody has signed. Do not go past this"
              + " stage before it is signed.";
      case SIGNED ->
          "the hold point is closed, signed"
              + point
                  .signature()
                  .map(one -> " by " + one.by() + " on " + DAY.format(one.at()) + " (UTC)")
                  .orElse("")
              + ".";
    };
  }

  private static Optional<String> closed(HoldPoint point) {
    List<String> counts = new ArrayList<>();
    count(point, How.CONFORMS, "by conformance", counts);
    count(point, How.REWORKED, "by rework", counts);
    count(point, How.ACCEPTED, "accepted as they are", counts);
    count(point, How.ANSWERED, "answered yes", counts);
    return counts.isEmpty()
        ? Optional.empty()
        : Optional.of("Items closed: " + String.join(", ", counts) + ".");
  }

  private static void count(HoldPoint point, How how, String words, List<String> counts) {
    long count = point.items().stream().filter(item -> item.how() == how).count();
    if (count > 0) {
      counts.add(count + " " + words);
    }
  }

  private String accepted(SignOffItem item) {
    String by =
        item.acceptance()
            .map(HoldPointSection::by)
            .orElseThrow(() -> new IllegalStateException("accepted by nobody: " + item.key()));
    return "Accepted as it is: " + told(item) + "; " + by;
  }

  private static String by(Acceptance one) {
    return "by "
        + one.by()
        + " on "
        + DAY.format(one.at())
        + " (UTC), engineer's reference "
        + one.reference()
        + ", because: "
        + one.why();
  }

  private String told(SignOffItem item) {
    String found =
        display == LengthDisplay.IMPERIAL ? FeetInWords.words(item.found()) : item.found();
    String text = title(item.key()) + ": " + found;
    return text.endsWith(".") ? text.substring(0, text.length() - 1) : text;
  }

  private static String title(String key) {
    int space = key.indexOf(' ');
    if (space < 0) {
      return key.replace('-', ' ');
    }
    String check = key.substring(0, space);
    String target = key.substring(space + 1);
    return check.equals("question")
        ? "question"
        : CheckWords.check(check) + ", " + CheckWords.target(check, target);
  }
}
