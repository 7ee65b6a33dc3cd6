package datumpeg.desktop.measure;

import datumpeg.desktop.measure.SessionWish.LinkWish;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What one user need not say again at the next session. Immutable.
 *
 * @param footKey the key that the foot switch sends, by its name; empty for none
 * @param tones whether tones are heard
 * @param left where the last session stood; empty before the first
 */
record Remembered(
    String operator, List<LinkWish> links, String footKey, boolean tones, Optional<LeftAt> left) {
  private static final String OPERATOR = "measure.operator";
  private static final String LINK = "measure.link.";
  private static final String PROFILE = "measure.profile.";
  private static final String FOOT = "measure.foot";
  private static final String TONES = "measure.tones";

  Remembered {
    links = List.copyOf(links);
  }

  static Remembered nothing() {
    return new Remembered("", List.of(), "", true, Optional.empty());
  }

  Remembered with(SessionWish wish) {
    return new Remembered(
        wish.operator(), wish.links(), footKey, tones, Optional.of(LeftAt.of(wish)));
  }

  /** The session that runs now asks for a target of this name. */
  Remembered withTarget(String name) {
    return new Remembered(
        operator, links, footKey, tones, left.map(session -> session.withTarget(name)));
  }

  Remembered withFootKey(String key) {
    return new Remembered(operator, links, key, tones, left);
  }

  Remembered withTones(boolean heard) {
    return new Remembered(operator, links, footKey, heard, left);
  }

  Map<String, String> asTexts() {
    Map<String, String> texts = new LinkedHashMap<>();
    texts.put(OPERATOR, operator);
    texts.put(FOOT, footKey);
    texts.put(TONES, Boolean.toString(tones));
    for (int i = 0; i < links.size(); i++) {
      texts.put(LINK + i, links.get(i).address());
      texts.put(PROFILE + i, links.get(i).profile());
    }
    // One behind the last says that no more follow, where more were kept before.
    texts.put(LINK + links.size(), "");
    left.ifPresent(session -> texts.putAll(session.asTexts()));
    return texts;
  }

  static Remembered of(Map<String, String> texts) {
    List<LinkWish> links = new ArrayList<>();
    while (!texts.getOrDefault(LINK + links.size(), "").isEmpty()) {
      int i = links.size();
      links.add(
          new LinkWish(
              texts.getOrDefault(LINK + i, ""),
              texts.getOrDefault(PROFILE + i, "general-text-line")));
    }
    return new Remembered(
        texts.getOrDefault(OPERATOR, ""),
        links,
        texts.getOrDefault(FOOT, ""),
        !"false".equals(texts.get(TONES)),
        LeftAt.of(texts));
  }
}
