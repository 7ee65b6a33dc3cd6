package datumpeg.bridge.link.serial;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.SerialSettings;
import java.io.IOException;

/** A second process that holds a port until its input ends: says "open" when it does. */
public final class PortHolder {
  private PortHolder() {}

  public static void main(String[] arguments) throws IOException {
    LinkAddress.Serial address = new LinkAddress.Serial(arguments[0], SerialSettings.DEFAULT);
    try (SerialLink link = SerialLink.open(address, LinkClock.system(), new Deaf())) {
      System.out.println("open " + link.address().text());
      System.in.readAllBytes();
    }
  }

  private static final class Deaf implements LinkListener {
    @Override
    public void received(Chunk chunk) {}

    @Override
    public void lost(LinkLostException loss) {}

    @Override
    public void ended() {}
  }
}
