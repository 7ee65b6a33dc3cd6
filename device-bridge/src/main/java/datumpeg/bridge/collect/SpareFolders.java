package datumpeg.bridge.collect;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Folders of this user, on other disks than the record as far as the machine has some, that keep
 * what waits while the disk of the record takes nothing. Immutable.
 *
 * @param all first choice first
 */
public record SpareFolders(List<Spare> all) {
  /** No folder but that of the captures. */
  public static final SpareFolders NONE = new SpareFolders(List.of());

  /** What a file system in memory is called: what is on it ends with the machine's next start. */
  private static final Set<String> IN_MEMORY = Set.of("tmpfs", "ramfs");

  public SpareFolders {
    all = List.copyOf(all);
  }

  /**
   * The folders of a machine: the program's state folder, the user's folder for the session
   * (XDG_RUNTIME_DIR, XDG Base Directory Specification 0.8), one in the temporary folder.
   *
   * @param state the program's own folder for what may be lost
   */
  public static SpareFolders of(Path state, Map<String, String> environment) {
    List<Spare> all = new ArrayList<>();
    all.add(Spare.own(state.resolve("waiting")));
    String runtime = environment.getOrDefault("XDG_RUNTIME_DIR", "");
    if (!runtime.isEmpty() && Path.of(runtime).isAbsolute()) {
      all.add(Spare.own(Path.of(runtime).resolve("datumpeg")));
    }
    String temporary =
        environment.getOrDefault("TMPDIR", System.getProperty("java.io.tmpdir", "/tmp"));
    String user = System.getProperty("user.name", "").replaceAll("[^A-Za-z0-9._-]", "_");
    all.add(Spare.amongOthers(Path.of(temporary).resolve("datumpeg-" + user)));
    return new SpareFolders(all);
  }

  /**
   * A folder that need not be there yet.
   *
   * @param isAmongOthers whether it lies where anybody may write, and so may put a folder of that
   *     name, with readings of their own in it
   */
  public record Spare(Path folder, boolean isAmongOthers) {
    /** A folder where nobody else may write. */
    public static Spare own(Path folder) {
      return new Spare(folder, false);
    }

    /** A folder where anybody may write. */
    public static Spare amongOthers(Path folder) {
      return new Spare(folder, true);
    }

    /** Whether it is there and of this user. */
    boolean isOurs() {
      return Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
          && (!isAmongOthers || isOwnedByThisUser());
    }

    private boolean isOwnedByThisUser() {
      try {
        return Files.getOwner(folder, LinkOption.NOFOLLOW_LINKS)
            .equals(
                folder
                    .getFileSystem()
                    .getUserPrincipalLookupService()
                    .lookupPrincipalByName(System.getProperty("user.name", "")));
      } catch (IOException | UnsupportedOperationException unknown) {
        return false;
      }
    }

    /** Makes it, for this user alone. */
    void make() throws IOException {
      if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
        Path parent = folder.toAbsolutePath().getParent();
        if (parent != null) {
          Files.createDirectories(parent);
        }
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
          Files.createDirectory(
              folder,
              PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        } else {
          Files.createDirectory(folder);
        }
      }
      if (!isOurs()) {
        throw new IOException(folder + " is not a folder of this user");
      }
    }
  }

  /** What a person should know of a place before the machine is switched off. */
  static String endOf(Path file) {
    try {
      return IN_MEMORY.contains(Files.getFileStore(file.toAbsolutePath()).type())
          ? ", until this machine is switched off"
          : "";
    } catch (IOException unknown) {
      return "";
    }
  }
}
