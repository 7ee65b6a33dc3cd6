package datumpeg.desktop.background;

/** What a long piece of work tells while it runs, and asks: whether it should stop. */
public interface Progress {
  /**
   * So much is done.
   *
   * @param of how much there is; 0 when that is not known
   * @throws java.util.concurrent.CancellationException if the user wants no more of it
   */
  void at(long done, long of);
}
