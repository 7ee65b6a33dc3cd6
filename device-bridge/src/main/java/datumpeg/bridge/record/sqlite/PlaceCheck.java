package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.UnsuitablePlaceException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Refuses places where a live record would come to harm. Locks over a network cannot be relied on,
 * and programs that keep folders in step copy a database while it is half written (SQLite, "How To
 * Corrupt An SQLite Database File", sections 2.1 and 1.2). Knows the common kinds only.
 */
final class PlaceCheck {
  private static final Set<String> NETWORK_TYPES =
      Set.of(
          "9p",
          "afpfs",
          "afs",
          "beegfs",
          "ceph",
          "cifs",
          "davfs",
          "fuse.davfs",
          "fuse.davfs2",
          "fuse.glusterfs",
          "fuse.rclone",
          "fuse.sshfs",
          "gfs2",
          "glusterfs",
          "lustre",
          "ncpfs",
          "nfs",
          "nfs4",
          "smb",
          "smb2",
          "smb3",
          "smbfs",
          "sshfs",
          "vboxsf",
          "webdav");

  private static final List<String> SYNC_MARKERS =
      List.of(".dropbox", ".dropbox.cache", ".stfolder", ".nextcloudsync.log", ".owncloudsync.log");

  private static final List<String> SYNC_FOLDERS =
      List.of(
          "dropbox", "onedrive", "google drive", "icloud drive", "mobile documents", "nextcloud");

  private final StorageProbe probe;

  PlaceCheck(StorageProbe probe) {
    this.probe = probe;
  }

  /**
   * @throws UnsuitablePlaceException if the file lies, or would lie, on a network or in a synced
   *     folder
   */
  void require(Path file) {
    Path folder = nearestExistingFolder(file.toAbsolutePath().normalize());
    String type = typeOf(folder);
    if (NETWORK_TYPES.contains(type) && !isTheWholeMachine(type, folder)) {
      throw refusal(file, "lies on a network file store (" + type + ")");
    }
    syncedAncestor(folder)
        .ifPresent(
            synced -> {
              throw refusal(
                  file, "lies in a folder that is kept in step elsewhere (" + synced + ")");
            });
  }

  private static UnsuitablePlaceException refusal(Path file, String what) {
    return new UnsuitablePlaceException(
        "The record "
            + file
            + " "
            + what
            + ", where a database in use can be damaged. Keep the record on this machine's own disk,"
            + " and copy it there and back while nothing uses it.");
  }

  private static Path nearestExistingFolder(Path file) {
    @Nullable Path folder = file.getParent();
    while (folder != null && !Files.isDirectory(folder)) {
      folder = folder.getParent();
    }
    return folder == null ? file.getRoot() : folder;
  }

  private String typeOf(Path folder) {
    try {
      return probe.typeOf(folder).toLowerCase(Locale.ROOT);
    } catch (IOException e) {
      // Some containers do not tell. A place that cannot be judged is not refused.
      return "";
    }
  }

  /** Some containers keep their own private disk behind the 9p protocol: there it is no network. */
  private boolean isTheWholeMachine(String type, Path folder) {
    return type.equals("9p") && typeOf(folder.getRoot()).equals(type);
  }

  private static Optional<Path> syncedAncestor(Path folder) {
    for (@Nullable Path at = folder; at != null; at = at.getParent()) {
      if (isSynced(at)) {
        return Optional.of(at);
      }
    }
    return Optional.empty();
  }

  private static boolean isSynced(Path folder) {
    @Nullable Path name = folder.getFileName();
    String lowerCase = name == null ? "" : name.toString().toLowerCase(Locale.ROOT);
    // Some append the account: "OneDrive - Example Company", "Dropbox (Example Company)".
    return SYNC_FOLDERS.stream()
            .anyMatch(known -> lowerCase.equals(known) || lowerCase.startsWith(known + " "))
        || SYNC_MARKERS.stream().anyMatch(marker -> Files.exists(folder.resolve(marker)));
  }
}
