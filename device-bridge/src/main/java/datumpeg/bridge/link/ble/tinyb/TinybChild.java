package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.failure.OuterWorldException;
import java.io.IOException;
import java.io.PrintStream;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tinyb.BluetoothManager;

/**
 * The child process: it alone loads the native library. It says what it finds on standard output,
 * takes commands on standard input, and ends with its input, so that it never outlives its parent.
 */
public final class TinybChild {
  private final ChildOutput output;
  private final String[] arguments;

  private TinybChild(ChildOutput output, String[] arguments) {
    this.output = output;
    this.arguments = arguments;
  }

  /**
   * Discovers or connects.
   *
   * @param arguments {@code discover ADAPTER MILLIS} or {@code connect ADAPTER ADDRESS DISCOVERY
   *     CONNECTING}, the last two in milliseconds; an empty adapter is {@code -}
   */
  public static void main(String[] arguments) {
    // What the library prints must not look like ours.
    PrintStream out = System.out;
    System.setOut(System.err);
    int status = new TinybChild(new ChildOutput(out), arguments).run();
    // Threads of the library would keep the process alive.
    Runtime.getRuntime().halt(status);
  }

  private int run() {
    try {
      TinybNatives.load();
    } catch (IOException | OuterWorldException absent) {
      output.refused("NO_LIBRARY", String.valueOf(absent.getMessage()));
      return 1;
    }
    BluetoothManager manager = manager();
    if (manager == null) {
      return 1;
    }
    TinybAdapters adapters = new TinybAdapters(manager, output);
    if (arguments[0].equals("discover")) {
      return adapters.discover(adapter(), Long.parseLong(arguments[2]));
    }
    TinybDevice device =
        adapters.connect(
            adapter(),
            arguments[2].toUpperCase(Locale.ROOT),
            Long.parseLong(arguments[3]),
            Long.parseLong(arguments[4]));
    return device == null ? 1 : device.serve(System.in);
  }

  private String adapter() {
    return arguments[1].equals("-") ? "" : arguments[1];
  }

  private @Nullable BluetoothManager manager() {
    try {
      return BluetoothManager.getBluetoothManager();
    } catch (RuntimeException absent) {
      output.refused("NO_SERVICE", String.valueOf(absent.getMessage()));
      return null;
    }
  }
}
