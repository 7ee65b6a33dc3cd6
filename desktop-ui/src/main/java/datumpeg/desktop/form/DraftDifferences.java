package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** In words how one draft differs from another. One thread. */
final class DraftDifferences {
  private static final double SAME_METRES = 1e-9;

  private final Words words;
  private final FieldNames names;

  DraftDifferences(Words words, FieldNames names) {
    this.words = words;
    this.names = names;
  }

  /** A sentence for each entry that is not the same. */
  List<String> sentences(JobDraft before, JobDraft now) {
    Map<String, String> old = before.leaves();
    Map<String, String> fresh = now.leaves();
    Set<String> paths = new LinkedHashSet<>(fresh.keySet());
    paths.addAll(old.keySet());
    List<String> sentences = new ArrayList<>();
    for (String path : paths) {
      @Nullable String was = old.get(path);
      @Nullable String is = fresh.get(path);
      if (is == null || !is.equals(was)) {
        sentences.add(sentence(path, was, is));
      }
    }
    return sentences;
  }

  private String sentence(String path, @Nullable String was, @Nullable String is) {
    String name = names.of(path);
    if (is == null) {
      return words.text("form.differs.gone", name, String.valueOf(was));
    }
    if (was == null) {
      return words.text("form.differs.added", name, is);
    }
    return words.text(same(was, is) ? "form.differs.written" : "form.differs", name, is, was);
  }

  /** Whether the same length is only written in another way. */
  private static boolean same(String was, String is) {
    OptionalDouble one = TypedValue.metres(was);
    OptionalDouble other = TypedValue.metres(is);
    return one.isPresent()
        && other.isPresent()
        && Math.abs(one.getAsDouble() - other.getAsDouble()) < SAME_METRES;
  }
}
