package datumpeg.desktop.form;

import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;

/** What became of a form that was stored, in words. Immutable. */
record StoredWords(Words words) {
  private static final int MOST_STRAYS = 8;

  String of(JobShelf.Taken taken) {
    String sentence =
        switch (taken.outcome()) {
          case STORED -> words.text("form.stored", taken.revision(), taken.job());
          case NOTHING_NEW -> words.text("form.nothing-new", taken.revision(), taken.job());
          case OVERTAKEN -> words.text("form.overtaken", taken.job());
        };
    return sentence + strays(taken.strays());
  }

  /** Which readings have no place any more, the first of them by name. */
  private String strays(List<String> strays) {
    if (strays.isEmpty()) {
      return "";
    }
    List<String> lines = new ArrayList<>(List.of(words.count("form.strays", strays.size())));
    lines.addAll(strays.subList(0, Math.min(MOST_STRAYS, strays.size())));
    if (strays.size() > MOST_STRAYS) {
      lines.add(words.text("form.more-strays", strays.size() - MOST_STRAYS));
    }
    return "\n" + String.join("\n", lines);
  }
}
