package datumpeg.bridge.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.Map;

/**
 * All that a command sees of the process it runs in; a test hands in its own.
 *
 * @param out standard output, UTF-8; carries only the answer
 * @param err standard error, UTF-8; carries messages and prompts
 * @param in standard input
 * @param environment the environment variables; {@code HOME} is always there in a real process
 * @param clock the time of day
 * @param workingDirectory the folder against which relative paths stand
 */
public record Console(
    PrintStream out,
    PrintStream err,
    InputStream in,
    Map<String, String> environment,
    Clock clock,
    Path workingDirectory) {

  public Console {
    environment = Map.copyOf(environment);
    workingDirectory = workingDirectory.toAbsolutePath();
  }

  /** The console of this process. Output is UTF-8 whatever the platform's own encoding. */
  static Console ofProcess() {
    Map<String, String> environment = new HashMap<>(System.getenv());
    environment.putIfAbsent("HOME", System.getProperty("user.home"));
    return new Console(
        utf8(FileDescriptor.out),
        utf8(FileDescriptor.err),
        System.in,
        environment,
        Clock.systemUTC(),
        Path.of(""));
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(
        new BufferedOutputStream(new FileOutputStream(descriptor)), true, StandardCharsets.UTF_8);
  }
}
