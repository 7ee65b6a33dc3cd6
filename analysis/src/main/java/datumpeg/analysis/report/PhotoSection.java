package datumpeg.analysis.report;

import datumpeg.analysis.report.writing.Markup;
import java.util.List;

/** The photos of a stage, each with the digest by which it is known again. */
final class PhotoSection {
  private final List<AttachedPhoto> photos;

  PhotoSection(List<AttachedPhoto> photos) {
    this.photos = List.copyOf(photos);
  }

  boolean has(String stage) {
    return photos.stream().anyMatch(photo -> photo.stage().equals(stage));
  }

  /** Nothing for a stage without photos. */
  void write(Markup page, String stage) {
    if (!has(stage)) {
      return;
    }
    page.open("div", "class", "photos");
    photos.stream()
        .filter(photo -> photo.stage().equals(stage))
        .forEach(photo -> write(page, photo));
    page.close();
  }

  private static void write(Markup page, AttachedPhoto photo) {
    page.open("div", "class", "photo");
    if (!photo.picture().isEmpty()) {
      page.empty("img", "src", photo.picture(), "alt", alternative(photo));
    }
    page.element("p", "Photo " + called(photo) + trouble(photo), "class", "caption");
    page.element("p", "SHA-256 " + photo.sha256(), "class", "heads");
    page.close();
  }

  private static String called(AttachedPhoto photo) {
    return photo.note().isBlank() ? photo.name() : photo.name() + ": " + photo.note();
  }

  private static String trouble(AttachedPhoto photo) {
    return photo.trouble().isEmpty() ? "" : ". NOT SHOWN: " + photo.trouble();
  }

  private static String alternative(AttachedPhoto photo) {
    return photo.note().isBlank() ? "Photo " + photo.name() : photo.note();
  }
}
