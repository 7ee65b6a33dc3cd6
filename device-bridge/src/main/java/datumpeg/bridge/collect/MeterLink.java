package datumpeg.bridge.collect;

import datumpeg.bridge.link.BackOff;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkOpener;
import datumpeg.bridge.link.LinkTimer;
import datumpeg.bridge.link.ReturningLink;
import datumpeg.bridge.link.ReturningLinkListener;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterProfile;
import java.time.Duration;

/**
 * A link that a session opens, and how the meter on it speaks.
 *
 * @param name as in the capture's header
 * @param address of a live link
 * @param opening how it is opened
 */
public record MeterLink(String name, LinkAddress address, MeterProfile profile, LiveLinks opening) {

  /** Whether the meter measures when it is told to. */
  public boolean canBeTold() {
    return !profile.trigger().isEmpty() || profile.language() instanceof Registers;
  }

  /** The same link, whose meter is asked only when a person says so. */
  MeterLink onDemand() {
    return new MeterLink(name, address, profile, opening.onDemand());
  }

  /** A link on a machine as its environment variables describe it. */
  public MeterLink(String name, LinkAddress address, MeterProfile profile) {
    this(name, address, profile, LiveLinks.of(System.getenv()));
  }

  /** The link of this address; as the other, on a machine as its variables describe it. */
  public static MeterLink of(String name, String text, LinkAddress address, MeterProfile profile) {
    return of(name, text, address, profile, LiveLinks.of(System.getenv()));
  }

  /**
   * The link of this address; a serial one that says nothing of its line is set up as the profile
   * says.
   *
   * @param text the address as a person wrote it
   */
  public static MeterLink of(
      String name, String text, LinkAddress address, MeterProfile profile, LiveLinks opening) {
    return new MeterLink(
        name,
        address instanceof LinkAddress.Serial port && !text.contains("?")
            ? new LinkAddress.Serial(port.path(), profile.serial())
            : address,
        profile,
        opening);
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
    return listener -> opening.open(address, profile, clock, listener);
  }

  private ReturningLink.Terms terms(LinkClock clock, Duration silence) {
    LinkTimer timer = LinkTimer.onThread("return of " + address.text());
    return new ReturningLink.Terms(BackOff.USUAL, silence, clock, timer);
  }
}
