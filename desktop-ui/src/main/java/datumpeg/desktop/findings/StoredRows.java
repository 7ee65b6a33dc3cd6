package datumpeg.desktop.findings;

import java.util.List;
import java.util.function.Consumer;

/** The rows of the record behind what is shown. What is told comes on the thread of the screen. */
public interface StoredRows {

  /** Reads the readings of these ids, down to their bytes. */
  void readings(String job, List<String> ids, Consumer<Behind> found);

  /**
   * Stores that something was moved.
   *
   * @param told a sentence on why it could not be stored; empty when it was
   */
  void moved(String job, String thing, String why, Consumer<String> told);

  /**
   * Readings as they were stored.
   *
   * @param trouble why they could not be read; empty if they could
   */
  record Behind(List<Row> rows, String trouble) {
    public Behind {
      rows = List.copyOf(rows);
    }
  }

  /**
   * One reading.
   *
   * @param value as received or typed, with its unit
   * @param target with its face and round
   * @param how which meter, over which link, who, when
   * @param bytes as received, in hexadecimal digits and as text; empty if it was typed
   * @param source where it came in: capture and line, or table and row
   */
  record Row(String id, String value, String target, String how, String bytes, String source) {}
}
