package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import org.jspecify.annotations.Nullable;

/** As many readings wait for the record as may: this one was not taken. The session goes on. */
public final class NothingMoreWaitsException extends OuterWorldException {
  private static final long serialVersionUID = 1L;

  NothingMoreWaitsException(int waitingCount, @Nullable Throwable trouble) {
    super(
        "No further reading is taken: "
            + waitingCount
            + " wait to be stored, which is the most that may. "
            + (trouble == null ? "" : trouble.getMessage()),
        trouble);
  }
}
