package datumpeg.bridge.collect;

import datumpeg.bridge.link.BackOff;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkOpener;
import datumpeg.bridge.link.LinkTimer;
import datumpeg.bridge.link.ReturningLink;
import datumpeg.bridge.link.ReturningLinkListener;
import datumpeg.bridge.link.serial.SerialLink;
import datumpeg.bridge.meter.MeterProfile;
import java.time.Duration;

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

  /**
   * Opens it, so that it comes back when it is lost.
   *
   * @param silence after which the listener is told that nothing came; zero for never
   * @throws datumpeg.bridge.link.LinkUnavailableException if it cannot be opened now
   */
  public Link open(LinkClock clock, Duration silence, ReturningLinkListener listener) {
    return ReturningLink.open(address, opener(clock), terms(clock, silence), listener);
  }

  /** Opens it now or as soon as it is there. */
  public Link openOrAwait(LinkClock clock, Duration silence, ReturningLinkListener listener) {
    return ReturningLink.openOrAwait(address, opener(clock), terms(clock, silence), listener);
  }

  private LinkOpener opener(LinkClock clock) {
    return listener -> SerialLink.open(address, clock, listener);
  }

  private ReturningLink.Terms terms(LinkClock clock, Duration silence) {
    LinkTimer timer = LinkTimer.onThread("return of " + address.text());
    return new ReturningLink.Terms(BackOff.USUAL, silence, clock, timer);
  }
}
