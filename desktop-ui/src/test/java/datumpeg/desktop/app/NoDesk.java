package datumpeg.desktop.app;

import datumpeg.desktop.signoff.Desk;
import java.nio.file.Path;

/** For screens that are only looked at. */
final class NoDesk implements Desk {
  @Override
  public void sign(String job, String stage, String by) {
    throw new AssertionError("nothing is signed here: " + job + " " + stage);
  }

  @Override
  public void accept(String job, String stage, String item, Acceptor acceptor) {
    throw new AssertionError("nothing is accepted here: " + job + " " + item);
  }

  @Override
  public void attach(String job, String stage, String by, Path photo) {
    throw new AssertionError("nothing is kept here: " + photo);
  }
}
