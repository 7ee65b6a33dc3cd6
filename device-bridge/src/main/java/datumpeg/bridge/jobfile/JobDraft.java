package datumpeg.bridge.jobfile;

import datumpeg.analysis.job.Job;
import datumpeg.bridge.mistake.Mistake;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.toml.TomlNode;
import datumpeg.bridge.toml.TomlNodes;
import datumpeg.bridge.toml.TomlWriter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A job file while it is being filled in, entry by entry. What no field shows is kept as it was.
 * Checked by the reader of job files itself. Immutable.
 *
 * <p>A path is the keys of an entry joined by points, and for an item of a list its number from 1:
 * {@code slab.corners.A1[2]}.
 */
public final class JobDraft {
  /** In mistakes an entry is named with its table, between apostrophes. */
  private static final Pattern NAMED =
      Pattern.compile("'([a-z_]+(?:\\.[A-Za-z0-9_-]+)+(?:\\[[0-9]+])*)'");

  private static final String NAME = "job file";

  private final TomlNode.Entries file;

  private JobDraft(TomlNode.Entries file) {
    this.file = file;
  }

  /** How an entry is written. */
  public enum Kind {
    /** Between quotation marks: a name, a length, an angle. */
    TEXT,
    /** Several texts, with semicolons between them, or commas where there is no semicolon. */
    LIST,
    /** A day, such as 2026-03-02. */
    DAY,
    /** A whole number. */
    WHOLE,
    /** A number, with a point or without. */
    NUMBER,
    /** {@code true} or {@code false}. */
    TRUTH,
    /**
     * A text, or a limit in one line: {@code lower -5 mm, upper 10 mm}, {@code ratio 500, cap 25
     * mm}, {@code up to 3 m: 8 mm, beyond: 12 mm}, {@code at 1 m: 10 mm, at 4 m: 13 mm}, {@code
     * formula max(4, 1.5*sqrt(L))}, {@code rule ID, source TEXT}.
     */
    LIMIT
  }

  /**
   * What the reader of job files says of a draft.
   *
   * @param job empty if anything is wrong
   * @param atEntries by entry, named as in mistakes: what is wrong with it
   * @param elsewhere what is wrong with no single entry
   */
  public record Checked(Optional<Job> job, Map<String, String> atEntries, List<String> elsewhere) {
    public Checked {
      atEntries = Map.copyOf(atEntries);
      elsewhere = List.copyOf(elsewhere);
    }
  }

  /** A draft in which nothing is said but that the roof is a gable. */
  public static JobDraft empty() {
    return new JobDraft(TomlNode.Entries.NONE)
        .with("job.id", Kind.TEXT, "")
        .with("building.roof", Kind.TEXT, "gable");
  }

  /**
   * A draft from a job file; its comments are left behind.
   *
   * @throws JobFileException if the text is not TOML
   */
  public static JobDraft of(String text) {
    Mistakes mistakes = new Mistakes();
    TomlNode.Entries file = TomlNodes.read(text, NAME, mistakes);
    if (!mistakes.isEmpty()) {
      throw new JobFileException(mistakes);
    }
    return new JobDraft(file);
  }

  /** What stands in an entry; empty if there is none, or if it is a table that is no one line. */
  public String text(String path) {
    return find(path).map(JobDraft::line).orElse("");
  }

  /** Whether an entry is a table that is no one line, so that it has no text to be changed. */
  public boolean isTable(String path) {
    return find(path)
        .filter(TomlNode.Entries.class::isInstance)
        .map(TomlNode.Entries.class::cast)
        .filter(table -> LimitLine.of(table).isEmpty())
        .isPresent();
  }

  /**
   * Every entry that is no table but a limit in one line, by its keys joined by points, in the
   * order of the file.
   */
  public Map<String, String> leaves() {
    Map<String, String> leaves = new LinkedHashMap<>();
    leaves("", file, leaves);
    return Collections.unmodifiableMap(leaves);
  }

  private static void leaves(String prefix, TomlNode.Entries table, Map<String, String> leaves) {
    table
        .entries()
        .forEach(
            (key, node) -> {
              if (node instanceof TomlNode.Entries inner && !isLimit(prefix, inner)) {
                leaves(prefix + key + ".", inner, leaves);
              } else {
                leaves.put(prefix + key, line(node));
              }
            });
  }

  private static boolean isLimit(String prefix, TomlNode.Entries table) {
    return prefix.equals("tolerances.") && LimitLine.of(table).isPresent();
  }

  private static String line(TomlNode node) {
    return node instanceof TomlNode.Entries table
        ? LimitLine.of(table).orElse("")
        : DraftText.of(node);
  }

  /** The keys of a table; none if there is no such table. */
  public List<String> keys(String path) {
    return find(path)
        .map(node -> node instanceof TomlNode.Entries table ? table.entries().keySet() : null)
        .map(List::copyOf)
        .orElse(List.of());
  }

  /** The same draft with an entry; a blank text takes the entry away, or blanks an item. */
  public JobDraft with(String path, Kind kind, String text) {
    @Nullable TomlNode value = text.isBlank() ? null : DraftText.node(kind, text.strip());
    return new JobDraft(DraftTree.changed(file, path, value));
  }

  /** The same draft with a blank text in an entry, which stays. */
  public JobDraft blanked(String path) {
    return new JobDraft(DraftTree.changed(file, path, new TomlNode.Text("")));
  }

  /** The same draft without a table or entry. */
  public JobDraft without(String path) {
    return new JobDraft(DraftTree.changed(file, path, null));
  }

  /** The same draft with an entry of a table one place further up. */
  public JobDraft raised(String table, String key) {
    return find(table)
        .filter(TomlNode.Entries.class::isInstance)
        .map(node -> DraftTree.raised((TomlNode.Entries) node, key))
        .map(node -> new JobDraft(DraftTree.changed(file, table, node)))
        .orElse(this);
  }

  /** The job file's text. */
  public String toml() {
    return TomlWriter.write(file).text();
  }

  public Checked check() {
    TomlWriter.Written written = TomlWriter.write(file);
    try {
      return new Checked(Optional.of(JobFile.read(written.text(), NAME)), Map.of(), List.of());
    } catch (JobFileException e) {
      Map<String, String> atEntries = new LinkedHashMap<>();
      List<String> elsewhere = new ArrayList<>();
      for (Mistake mistake : e.mistakes()) {
        String path = entry(mistake, written.paths());
        if (path.indexOf('.') < 0) {
          elsewhere.add(mistake.sentence());
        } else {
          atEntries.merge(path, mistake.sentence(), (one, other) -> one + " " + other);
        }
      }
      return new Checked(Optional.empty(), atEntries, elsewhere);
    }
  }

  /** The entry that a mistake is about: the one it names, else the one that stands there. */
  private static String entry(Mistake mistake, Map<Integer, String> paths) {
    Matcher named = NAMED.matcher(mistake.sentence());
    if (named.find()) {
      return String.valueOf(named.group(1));
    }
    return paths.getOrDefault(mistake.place().line(), "");
  }

  private Optional<TomlNode> find(String path) {
    return DraftTree.find(file, path);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof JobDraft draft && draft.file.equals(file);
  }

  @Override
  public int hashCode() {
    return file.hashCode();
  }
}
