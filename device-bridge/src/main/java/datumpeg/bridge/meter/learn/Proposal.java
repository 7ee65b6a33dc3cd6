package datumpeg.bridge.meter.learn;

import datumpeg.bridge.meter.MeterProfile;

/**
 * A profile that fits all readings so far.
 *
 * @param words what it takes as the value, for a person to choose by
 */
public record Proposal(MeterProfile profile, String words) {}
