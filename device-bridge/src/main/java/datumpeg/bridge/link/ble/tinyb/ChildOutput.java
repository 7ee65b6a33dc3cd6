package datumpeg.bridge.link.ble.tinyb;

import java.io.PrintStream;

/** The child's lines to its parent. Thread-safe. */
final class ChildOutput {
  private final PrintStream out;

  ChildOutput(PrintStream out) {
    this.out = out;
  }

  synchronized void say(String word, String... parts) {
    out.print(ChildLine.of(word, parts).text() + "\n");
    out.flush();
  }

  /** Nothing came of it, of this kind, in these words. */
  void refused(String kind, String words) {
    say("refused", kind, ChildLine.hex(words));
  }
}
