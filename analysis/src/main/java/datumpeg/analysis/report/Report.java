package datumpeg.analysis.report;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.FeetInWords;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.signoff.HoldPoint;
import java.util.List;
import java.util.Optional;

/**
 * The findings of a job, or of one of its stages, as a page: HTML that is also well-formed XML
 * (W3C, Polyglot Markup, 2015), with its drawings in it and nothing outside it. Equal inputs give
 * equal text. Immutable.
 */
public final class Report {
  private final Job job;
  private final Findings findings;
  private final List<Reading> readings;
  private final List<HoldPoint> holdPoints;
  private final List<AttachedPhoto> photos;

  /** A report that names the readings it stands on by their ids only. */
  public Report(Job job, Findings findings) {
    this(job, findings, List.of());
  }

  /**
   * A report that lists the readings it stands on.
   *
   * @param readings those the findings were reduced from; others are left out
   */
  public Report(Job job, Findings findings, List<Reading> readings) {
    this(job, findings, readings, List.of());
  }

  /**
   * A report that says how the hold points stand as well.
   *
   * @param holdPoints of the job's stages; a stage whose hold point is open is not shown as done
   */
  public Report(Job job, Findings findings, List<Reading> readings, List<HoldPoint> holdPoints) {
    this(job, findings, readings, holdPoints, List.of());
  }

  /**
   * A report that shows the photos of the stages as well.
   *
   * @param photos in the order in which they were attached
   */
  public Report(
      Job job,
      Findings findings,
      List<Reading> readings,
      List<HoldPoint> holdPoints,
      List<AttachedPhoto> photos) {
    this.photos = List.copyOf(photos);
    this.holdPoints = List.copyOf(holdPoints);
    this.job = job;
    this.findings = findings;
    this.readings = List.copyOf(readings);
  }

  /** The page. A stage without readings gives a page that says so. */
  public String html(ReportOptions options) {
    Findings shown =
        options.display() == LengthDisplay.IMPERIAL ? FeetInWords.of(findings) : findings;
    List<StageFindings> stages =
        shown.stages().stream()
            .filter(stage -> options.stage().map(stage.stage()::equals).orElse(true))
            .toList();
    Markup page = new Markup();
    page.open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", "en");
    head(page, options);
    page.open("body");
    body(page, options, stages);
    page.close().close();
    return "<!DOCTYPE html>\n" + page.written();
  }

  private void head(Markup page, ReportOptions options) {
    page.open("head").empty("meta", "charset", "utf-8");
    page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.element("title", job.identity().id() + ": " + title(options));
    page.open("style").styleSheet(PageStyle.CSS).close();
    page.close();
  }

  private void body(Markup page, ReportOptions options, List<StageFindings> stages) {
    LengthFigures figures = new LengthFigures(options.display());
    ReadingNumbers numbers = new ReadingNumbers(stages);
    new HeaderSection(job).write(page, title(options), options);
    List<HoldPoint> holding =
        holdPoints.stream()
            .filter(point -> options.stage().map(point.stage().id()::equals).orElse(true))
            .toList();
    new AnswerSection(job, holding).write(page, stages, options.stage());
    new HoldPointSection(job, options.display(), new PhotoSection(photos)).write(page, holding);
    for (StageFindings stage : stages) {
      new StageSection(job, stage, figures, numbers).write(page, stages.size() > 1);
    }
    if (!stages.isEmpty()) {
      new MeasuredSection(job, figures).write(page, readings, numbers);
      new MeaningSection(job.decision()).write(page);
    }
    new CautionSection(job).write(page, stages);
    new SignatureSection(job).write(page, options.stage());
    new HeadsSection(findings).write(page, options);
  }

  private String title(ReportOptions options) {
    Optional<String> stage = options.stage();
    return stage.isEmpty()
        ? "what was measured, and what follows"
        : StageTitle.of(job, stage.get());
  }
}
