package datumpeg.bridge.exchange;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.mistake.Mistake;
import datumpeg.bridge.mistake.Mistakes;
import java.util.ArrayList;
import java.util.List;

/** A table that cannot be entered; nothing of it was stored. The message tells every mistake. */
public final class TableException extends InputException {
  private static final long serialVersionUID = 1L;

  private final ArrayList<Mistake> mistakes;

  TableException(Mistakes mistakes) {
    super(mistakes.text() + "\nNothing was stored.");
    this.mistakes = new ArrayList<>(mistakes.list());
  }

  /** In the order of the file. */
  public List<Mistake> mistakes() {
    return List.copyOf(mistakes);
  }
}
