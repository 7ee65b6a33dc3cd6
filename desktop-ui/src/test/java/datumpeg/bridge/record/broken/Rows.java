package datumpeg.bridge.record.broken;

/** Something that a View must not see. */
public record Rows(int count) {}
