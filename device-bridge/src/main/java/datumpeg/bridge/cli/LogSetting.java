package datumpeg.bridge.cli;

import java.nio.file.Path;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogManager;
import java.util.logging.LogRecord;

/**
 * Sends java.util.logging to the log file instead of standard error. The JDK makes an instance when
 * the first logger is asked for, because {@link #install} named this class; until then logging
 * costs nothing.
 */
public final class LogSetting {
  private static final String CLASS = "java.util.logging.config.class";
  private static final String FILE = "datumpeg.log";

  /** Called by {@link LogManager}, which finds the class by its name. */
  public LogSetting() {
    LogFile log = new LogFile(Path.of(System.getProperty(FILE, "datumpeg.log")));
    LogManager.getLogManager().getLogger("").addHandler(new ToFile(log));
  }

  /** Makes this class the setting of the process, unless the user chose another one. */
  static void install(LogFile log) {
    if (System.getProperty(CLASS) == null
        && System.getProperty("java.util.logging.config.file") == null) {
      System.setProperty(FILE, log.file().toString());
      System.setProperty(CLASS, LogSetting.class.getName());
    }
  }

  private static final class ToFile extends Handler {
    private final LogFile log;

    ToFile(LogFile log) {
      this.log = log;
    }

    @Override
    public void publish(LogRecord entry) {
      if (isLoggable(entry) && !isSmallTalk(entry)) {
        log.append(entry);
      }
    }

    /** The bus library notes each connection; a link that is tried again makes many. */
    private static boolean isSmallTalk(LogRecord entry) {
      String name = entry.getLoggerName();
      return name != null
          && name.startsWith("org.freedesktop.dbus")
          && entry.getLevel().intValue() < Level.WARNING.intValue();
    }

    @Override
    public void flush() {}

    @Override
    public void close() {}
  }
}
