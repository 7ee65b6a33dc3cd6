package datumpeg.analysis.tell;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Checks with what they are called, in order. */
final class Titles {
  private Titles() {}

  /**
   * @param checksAndTitles in turns
   */
  static Map<String, String> of(String... checksAndTitles) {
    Map<String, String> titles = new LinkedHashMap<>();
    for (int i = 0; i < checksAndTitles.length; i += 2) {
      titles.put(checksAndTitles[i], checksAndTitles[i + 1]);
    }
    return Collections.unmodifiableMap(titles);
  }
}
