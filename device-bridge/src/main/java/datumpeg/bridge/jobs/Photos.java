package datumpeg.bridge.jobs;

import datumpeg.analysis.report.AttachedPhoto;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.PhotoEntry;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Photos of stages: copied beside the record, named in it with their digest, so that another
 * picture in their place shows.
 */
public final class Photos {
  private final Path folder;

  public Photos(Path record) {
    this.folder = record.resolveSibling("photos");
  }

  /**
   * Looks for a photo before anything is stored.
   *
   * @throws InputException if there is no such file
   */
  public static void require(Path photo) {
    if (!Files.isRegularFile(photo)) {
      throw new InputException("There is no photo " + photo + ".");
    }
  }

  /**
   * Copies a photo and stores its name and digest.
   *
   * @throws InputException if there is no such file
   * @throws OuterWorldException if it cannot be copied; nothing is stored then
   */
  public PhotoEntry attach(
      SiteRecord record, SessionStart start, JobKey job, String stage, Path photo, String note) {
    PhotoEntry entry =
        new PhotoEntry(stage, String.valueOf(photo.getFileName()), copy(photo), note);
    try (RecordSession session = record.openSession(start)) {
      session.append(job, entry);
    }
    return entry;
  }

  /** Where a photo lies. */
  public Path file(PhotoEntry photo) {
    return folder.resolve(photo.sha256().substring(0, 16) + "-" + photo.name());
  }

  /** A photo as a report shows it: small, if what lies there is what was attached. */
  public AttachedPhoto forReport(PhotoEntry photo) {
    Path file = file(photo);
    try {
      byte[] bytes = Files.readAllBytes(file);
      if (!sha256(bytes).equals(photo.sha256())) {
        return notShown(photo, "the file in its place is another one than was attached.");
      }
      return PhotoPicture.dataUri(bytes)
          .map(picture -> shown(photo, picture))
          .orElseGet(
              () ->
                  notShown(photo, "it is no picture that can be read here (JPEG, PNG, GIF, BMP)."));
    } catch (NoSuchFileException e) {
      return notShown(photo, "its file is not in the folder photos beside the record.");
    } catch (IOException e) {
      return notShown(photo, "its file could not be read.");
    }
  }

  private static AttachedPhoto shown(PhotoEntry photo, String picture) {
    return new AttachedPhoto(
        photo.stage(), photo.name(), photo.sha256(), photo.note(), picture, "");
  }

  private static AttachedPhoto notShown(PhotoEntry photo, String why) {
    return new AttachedPhoto(photo.stage(), photo.name(), photo.sha256(), photo.note(), "", why);
  }

  private static String sha256(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private String copy(Path photo) {
    try {
      Files.createDirectories(folder);
      Path fresh = Files.createTempFile(folder, "copying", ".part");
      try {
        String sha256 = copy(photo, fresh);
        Path place = file(new PhotoEntry("-", String.valueOf(photo.getFileName()), sha256, ""));
        Files.move(fresh, place, StandardCopyOption.REPLACE_EXISTING);
        return sha256;
      } finally {
        Files.deleteIfExists(fresh);
      }
    } catch (NoSuchFileException e) {
      throw new InputException("There is no photo " + photo + ".", e);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The photo " + photo + " could not be copied to " + folder + ": " + e.getMessage() + ".",
          e);
    }
  }

  private static String copy(Path photo, Path to) throws IOException {
    try (InputStream in = Files.newInputStream(photo);
        OutputStream out = Files.newOutputStream(to)) {
      MessageDigest digest = sha256();
      in.transferTo(new DigestOutputStream(out, digest));
      return HexFormat.of().formatHex(digest.digest());
    }
  }
}
