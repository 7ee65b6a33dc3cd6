package datumpeg.analysis.drift;

import java.time.Instant;

/** A check of a meter in its history. */
public record DatedCheck(String meter, Instant at, MeterCheck check) {}
