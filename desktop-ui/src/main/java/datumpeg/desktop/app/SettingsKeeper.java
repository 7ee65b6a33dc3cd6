package datumpeg.desktop.app;

import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/**
 * Writes the settings whenever they change, off the JavaFX thread. Thread-safe; closing waits until
 * the newest are written.
 */
final class SettingsKeeper implements AutoCloseable {
  private static final Logger LOG = System.getLogger(SettingsKeeper.class.getName());
  private static final long SECONDS_TO_END = 3;

  private final SettingsFile file;
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread made = new Thread(task, "settings");
            made.setDaemon(true);
            return made;
          });
  private final NewestValue<Settings> newest = new NewestValue<>(thread, this::save);

  SettingsKeeper(SettingsFile file) {
    this.file = file;
  }

  void keep(Settings settings) {
    if (!thread.isShutdown()) {
      newest.put(settings);
    }
  }

  @Override
  public void close() {
    thread.shutdown();
    try {
      thread.awaitTermination(SECONDS_TO_END, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Settings that cannot be written are no reason to stop work: the log says why. */
  private void save(Settings settings) {
    try {
      file.save(settings);
    } catch (IOException e) {
      LOG.log(Level.WARNING, "The settings could not be written.", e);
    }
  }
}
