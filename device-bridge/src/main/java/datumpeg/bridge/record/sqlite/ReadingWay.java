package datumpeg.bridge.record.sqlite;

/**
 * How a file is opened to be read. SQLite keeps an index beside a record ("WAL-mode File Format",
 * section 2), for which a full disk has no room and a read-only one takes no file.
 */
enum ReadingWay {
  /** Beside whoever writes. */
  SHARED("", ""),

  /**
   * Nobody else may write meanwhile: the index is then in memory (SQLite, "Write-Ahead Logging",
   * 7).
   */
  ALONE("", "PRAGMA locking_mode = EXCLUSIVE"),

  /**
   * As a file that nobody can change, which needs neither index nor locks ("URI Filenames", 3.1).
   */
  UNCHANGING("?immutable=1", "");

  private final String options;
  private final String pragma;

  ReadingWay(String options, String pragma) {
    this.options = options;
    this.pragma = pragma;
  }

  /** What stands behind the file's URI. */
  String options() {
    return options;
  }

  /** What is said before anything is read; empty for nothing. */
  String pragma() {
    return pragma;
  }
}
