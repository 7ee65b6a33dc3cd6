package datumpeg.desktop.measure;

import java.util.List;

/** What texts to choose from have in common at their beginnings. */
final class CommonWords {
  private CommonWords() {}

  /** The texts without the whole words with which all of them begin; none becomes empty. */
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
    return leavesSome ? texts.stream().map(text -> text.substring(end)).toList() : texts;
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
