package datumpeg.bridge.mistake;

/**
 * A place in a text file.
 *
 * @param file the file's name as the person gave it
 * @param line from 1; 0 for the file as a whole
 * @param column from 1; 0 for the line as a whole
 */
public record Place(String file, int line, int column) {

  public static Place ofFile(String file) {
    return new Place(file, 0, 0);
  }

  /** {@code FILE:LINE:COLUMN}, as far as it is known. */
  public String text() {
    if (line == 0) {
      return file;
    }
    return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
  }
}
