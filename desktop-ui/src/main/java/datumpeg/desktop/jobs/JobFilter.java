package datumpeg.desktop.jobs;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.text.Figures;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Which jobs are to be seen: those that fit everything that is given. Immutable.
 *
 * @param text words that must all stand in a job's name, id, site, crew, slab layer, day of
 *     beginning or day of the last entry
 * @param crew empty for any, as the next two
 * @param slabBy who laid the slab
 * @param from first day of a period in which there was work on the job: from its beginning to its
 *     last entry
 * @param to last day of the period
 */
record JobFilter(
    String text,
    String crew,
    String site,
    String slabBy,
    Optional<LocalDate> from,
    Optional<LocalDate> to) {
  static final JobFilter ALL = new JobFilter("", "", "", "", Optional.empty(), Optional.empty());

  private static final String KEPT = "jobs.";

  boolean isAll() {
    return text.isBlank()
        && crew.isEmpty()
        && site.isEmpty()
        && slabBy.isEmpty()
        && from.isEmpty()
        && to.isEmpty();
  }

  JobFilter withText(String newText) {
    return new JobFilter(newText, crew, site, slabBy, from, to);
  }

  JobFilter withCrew(String newCrew) {
    return new JobFilter(text, newCrew, site, slabBy, from, to);
  }

  JobFilter withSite(String newSite) {
    return new JobFilter(text, crew, newSite, slabBy, from, to);
  }

  JobFilter withSlabBy(String newSlabBy) {
    return new JobFilter(text, crew, site, newSlabBy, from, to);
  }

  JobFilter between(Optional<LocalDate> newFrom, Optional<LocalDate> newTo) {
    return new JobFilter(text, crew, site, slabBy, newFrom, newTo);
  }

  /** What is kept of it for the next start, by names. */
  Map<String, String> kept() {
    return Map.of(
        KEPT + "text", text,
        KEPT + "crew", crew,
        KEPT + "site", site,
        KEPT + "slab", slabBy,
        KEPT + "from", from.map(LocalDate::toString).orElse(""),
        KEPT + "to", to.map(LocalDate::toString).orElse(""));
  }

  /** What was kept; what makes no sense there is left open. */
  static JobFilter ofKept(Map<String, String> kept) {
    return new JobFilter(
        kept.getOrDefault(KEPT + "text", ""),
        kept.getOrDefault(KEPT + "crew", ""),
        kept.getOrDefault(KEPT + "site", ""),
        kept.getOrDefault(KEPT + "slab", ""),
        day(kept.getOrDefault(KEPT + "from", "")),
        day(kept.getOrDefault(KEPT + "to", "")));
  }

  private static Optional<LocalDate> day(String text) {
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /**
   * Whether a job is to be seen.
   *
   * @param zone whose days count
   */
  boolean fits(JobState job, ZoneId zone) {
    Optional<JobOverview> overview = job.overview();
    return is(crew, overview.map(JobOverview::crew))
        && is(site, overview.map(JobOverview::site))
        && is(slabBy, overview.map(JobOverview::slabBy))
        && isInPeriod(job, zone)
        && hasWords(job, zone);
  }

  private static boolean is(String wanted, Optional<String> found) {
    return wanted.isEmpty() || found.filter(wanted::equals).isPresent();
  }

  /** A job without any day fits no period. */
  private boolean isInPeriod(JobState job, ZoneId zone) {
    if (from.isEmpty() && to.isEmpty()) {
      return true;
    }
    Optional<LocalDate> last = job.row().lastReadAt().map(at -> at.atZone(zone).toLocalDate());
    Optional<LocalDate> first = job.overview().flatMap(JobOverview::started).or(() -> last);
    Optional<LocalDate> end = last.or(() -> first);
    return first.isPresent()
        && end.isPresent()
        && to.map(day -> !first.get().isAfter(day)).orElse(true)
        && from.map(day -> !end.get().isBefore(day)).orElse(true);
  }

  private boolean hasWords(JobState job, ZoneId zone) {
    if (text.isBlank()) {
      return true;
    }
    List<String> told = new ArrayList<>(List.of(job.row().id(), job.row().name()));
    job.row().lastReadAt().ifPresent(at -> told.add(Figures.minute(at, zone)));
    job.overview()
        .ifPresent(
            overview -> {
              told.addAll(List.of(overview.site(), overview.crew(), overview.slabBy()));
              overview.started().ifPresent(day -> told.add(day.toString()));
            });
    String all = String.join("\n", told).toLowerCase(Locale.ROOT);
    return List.of(text.strip().toLowerCase(Locale.ROOT).split("\\s+", -1)).stream()
        .allMatch(all::contains);
  }
}
