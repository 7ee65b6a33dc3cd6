package datumpeg.analysis.report;

import java.util.regex.Pattern;

/**
 * A photo that belongs to a stage, as the page shows it. Immutable.
 *
 * @param name of its file, as it was attached
 * @param sha256 of its bytes as they were attached
 * @param note what it shows; may be empty
 * @param picture the picture itself, as a data URI; empty if there is none to be shown
 * @param trouble a sentence why it is not shown; empty if it is
 */
public record AttachedPhoto(
    String stage, String name, String sha256, String note, String picture, String trouble) {
  private static final Pattern PICTURE =
      Pattern.compile("data:image/(?:jpeg|png);base64,[A-Za-z0-9+/]+={0,2}");

  /**
   * @throws IllegalArgumentException for a photo that is neither shown nor told why, or shown from
   *     elsewhere than the page itself
   */
  public AttachedPhoto {
    if (picture.isEmpty() == trouble.isEmpty()) {
      throw new IllegalArgumentException(
          "The photo " + name + " needs either a picture or the reason why there is none.");
    }
    if (!picture.isEmpty() && !PICTURE.matcher(picture).matches()) {
      throw new IllegalArgumentException(
          "The photo " + name + " is no picture within the page; expected a data URI.");
    }
  }
}
