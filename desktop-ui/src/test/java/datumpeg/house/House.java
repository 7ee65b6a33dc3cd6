package datumpeg.house;

import java.nio.file.Path;

/** Where the house stands. */
final class House {
  /**
   * The top level of the repository; the build names it, else it is the folder above this module.
   */
  static final Path ROOT = Path.of(System.getProperty("datumpeg.root", "..")).toAbsolutePath();

  private House() {}
}
