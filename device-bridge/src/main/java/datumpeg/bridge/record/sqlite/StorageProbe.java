package datumpeg.bridge.record.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Tells what kind of file store a folder lies on. */
@FunctionalInterface
public interface StorageProbe {
  StorageProbe OF_THIS_MACHINE = folder -> Files.getFileStore(folder).type();

  /**
   * @param folder one that exists
   * @return the operating system's word: {@code ext4}, {@code nfs}, {@code fuse.sshfs}, …
   * @throws IOException if it cannot be told
   */
  String typeOf(Path folder) throws IOException;
}
