package datumpeg.desktop.measure;

import java.util.List;

/** What texts to choose from have in common at their beginnings. */
final class CommonWords {
  private CommonWords() {}

  /**
   * The texts without the whole words with which all of them begin, and without the last of these
   * words where all have them a second time: "A1 to B4" of "from slab corner A1 to slab corner B4".
   * None becomes empty.
   */
  static List<String> without(List<String> texts) {
    if (texts.size() < 2) {
      return texts;
    }
    String common = texts.get(0);
    for (String text : texts) {
      common = common.substring(0, same(common, text));
    }
    int end = common.lastIndexOf(' ') + 1;
    boolean leavesSome = texts.stream().allMatch(text -> text.length() > end);
    return leavesSome
        ? withoutAgain(common.substring(0, end), texts.stream().map(t -> t.substring(end)).toList())
        : texts;
  }

  private static List<String> withoutAgain(String begin, List<String> rests) {
    for (int from = 0; from >= 0 && from < begin.length(); from = begin.indexOf(' ', from) + 1) {
      String again = " " + begin.substring(from);
      if (rests.stream().allMatch(rest -> rest.contains(again))) {
        return rests.stream().map(rest -> rest.replace(again, " ")).toList();
      }
    }
    return rests;
  }

  private static int same(String one, String other) {
    int length = 0;
    while (length < Math.min(one.length(), other.length())
        && one.charAt(length) == other.charAt(length)) {
      length++;
    }
    return length;
  }
}
