package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.Bytes;
import java.util.Set;

/**
 * One characteristic of a meter.
 *
 * @param handle by which the backend knows it
 * @param service the UUID of its service, in small letters
 * @param uuid its own, in small letters
 * @param uses what may be done with it
 * @param presentation the seven bytes of its Characteristic Presentation Format; empty without one
 */
public record BleCharacteristic(
    String handle, String service, String uuid, Set<Use> uses, Bytes presentation) {

  /** What may be done with a characteristic. */
  public enum Use {
    READ("read"),
    WRITE("write"),
    WRITE_WITHOUT_ANSWER("write-without-response"),
    NOTIFY("notify"),
    INDICATE("indicate");

    private final String flag;

    Use(String flag) {
      this.flag = flag;
    }

    /** BlueZ's own word for it. */
    public String flag() {
      return flag;
    }
  }

  public BleCharacteristic {
    uses = Set.copyOf(uses);
  }

  boolean reports() {
    return uses.contains(Use.NOTIFY) || uses.contains(Use.INDICATE);
  }

  boolean takesCommands() {
    return uses.contains(Use.WRITE) || uses.contains(Use.WRITE_WITHOUT_ANSWER);
  }
}
