package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The child process of the native library, as a test ends it. */
public final class NativeProcess {
  private static final int SIGSEGV = 11;

  /**
   * Only the native process is started with it. Its main class stands behind the class path, where
   * the system may have cut the line off: it tells 4096 bytes.
   */
  private static final String ITS_OPTION = "-XX:-CreateCoredumpOnCrash";

  private NativeProcess() {}

  /** Ends the one there is by signal 11, and waits until it is gone. */
  public static void crash() throws IOException, InterruptedException {
    List<ProcessHandle> children =
        ProcessHandle.current()
            .children()
            .filter(child -> child.info().commandLine().orElse("").contains(ITS_OPTION))
            .toList();
    assertEquals(1, children.size(), "there must be one native process");
    String pid = String.valueOf(children.get(0).pid());
    assertEquals(0, new ProcessBuilder("kill", "-" + SIGSEGV, pid).start().waitFor());
    children.get(0).onExit().orTimeout(60, TimeUnit.SECONDS).join();
  }
}
