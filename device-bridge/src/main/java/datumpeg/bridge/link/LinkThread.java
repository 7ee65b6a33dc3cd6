package datumpeg.bridge.link;

/** The one thread of a link. Thread-safe. */
public final class LinkThread {
  private final Thread thread;

  /** A thread named after the link, not yet running; it does not keep the program alive. */
  public LinkThread(LinkAddress address, Runnable body) {
    this.thread = new Thread(body, "link " + address.text());
    thread.setDaemon(true);
  }

  public void start() {
    thread.start();
  }

  /** Waits until the thread has ended; at once if it is the caller's own. */
  public void awaitEnd() {
    boolean interrupted = false;
    while (Thread.currentThread() != thread && thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
