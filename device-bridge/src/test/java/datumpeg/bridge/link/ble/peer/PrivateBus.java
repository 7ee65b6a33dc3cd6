package datumpeg.bridge.link.ble.peer;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** A D-Bus daemon of the test's own. One thread. */
public final class PrivateBus implements AutoCloseable {
  private static final List<Path> PLACES =
      List.of(Path.of("/usr/bin/dbus-daemon"), Path.of("/bin/dbus-daemon"));

  /** The bus hands everything to everybody, as one user's own bus may. */
  private static final String CONFIGURATION =
      """
      <!DOCTYPE busconfig PUBLIC "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
       "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
      <busconfig>
        <listen>unix:path=%s</listen>
        <auth>EXTERNAL</auth>
        <policy context="default">
          <allow send_destination="*" eavesdrop="true"/>
          <allow eavesdrop="true"/>
          <allow own="*"/>
        </policy>
      </busconfig>
      """;

  private final Process daemon;
  private final String address;

  private PrivateBus(Process daemon, String address) {
    this.daemon = daemon;
    this.address = address;
  }

  /** Why a test that needs the daemon cannot run here; empty where it can. */
  public static Optional<String> obstacle() {
    return program().isPresent()
        ? Optional.empty()
        : Optional.of("there is no dbus-daemon on this machine (Debian package dbus)");
  }

  private static Optional<Path> program() {
    return PLACES.stream().filter(Files::isExecutable).findFirst();
  }

  /** Starts a bus whose files lie in the folder. */
  public static PrivateBus start(Path folder) throws IOException {
    Path configuration = folder.resolve("bus.conf");
    Files.writeString(configuration, CONFIGURATION.formatted(folder.resolve("bus.socket")));
    Process daemon =
        new ProcessBuilder(
                program().orElseThrow().toString(),
                "--config-file=" + configuration,
                "--nofork",
                "--nopidfile",
                "--print-address=1")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader said =
        new BufferedReader(new InputStreamReader(daemon.getInputStream(), StandardCharsets.UTF_8));
    String address = said.readLine();
    if (address == null) {
      throw new IOException("the bus ended before it said its address");
    }
    return new PrivateBus(daemon, address);
  }

  /** Where it is reached. */
  public String address() {
    return address;
  }

  /** The bus dies, with everything on it. */
  @Override
  public void close() {
    daemon.destroyForcibly();
    daemon.onExit().orTimeout(60, TimeUnit.SECONDS).join();
  }
}
