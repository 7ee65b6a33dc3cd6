package datumpeg.bridge.natives;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Why a folder did not take a library, in few words. */
final class Refusal {
  private Refusal() {}

  static String words(Throwable refused) {
    if (refused instanceof NoSuchFileException) {
      return "there is no such folder";
    }
    if (refused instanceof AccessDeniedException) {
      return "this user may not write there";
    }
    if (refused instanceof FileSystemException system && system.getReason() != null) {
      return system.getReason();
    }
    String words = String.valueOf(refused.getMessage());
    // "FILE: FILE: failed to map segment from shared object", where a folder is mounted noexec.
    return refused instanceof UnsatisfiedLinkError
        ? words.substring(words.lastIndexOf(": ") + 1).strip()
        : words;
  }
}
