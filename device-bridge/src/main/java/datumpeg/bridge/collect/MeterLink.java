package datumpeg.bridge.collect;

import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.meter.MeterProfile;

/**
 * A link that a session opens, and how the meter on it speaks.
 *
 * @param name as in the capture's header
 */
public record MeterLink(String name, LinkAddress.Serial address, MeterProfile profile) {

  /** The link of this address; one that says nothing of its line is set up as the profile says. */
  public static MeterLink of(
      String name, String text, LinkAddress.Serial address, MeterProfile profile) {
    return new MeterLink(
        name,
        text.contains("?") ? address : new LinkAddress.Serial(address.path(), profile.serial()),
        profile);
  }
}
