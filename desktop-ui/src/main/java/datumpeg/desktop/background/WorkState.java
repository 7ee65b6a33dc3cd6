package datumpeg.desktop.background;

/**
 * A piece of work as it stands.
 *
 * @param name what is being done, in words; empty when nothing is
 * @param done so much of it
 * @param of how much there is; 0 when that is not known
 */
public record WorkState(String name, long done, long of) {
  public static final WorkState NOTHING = new WorkState("", 0, 0);

  public boolean isRunning() {
    return !name.isEmpty();
  }

  /** From 0 to 1, or negative when it is not known. */
  public double fraction() {
    return of > 0 ? Math.min(1, (double) done / of) : -1;
  }
}
