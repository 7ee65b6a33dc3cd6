package datumpeg.analysis.adjust;

/**
 * A height of a point above a set-up's plane, up positive.
 *
 * @param observation in metres
 */
public record LevelReading(String setUp, String point, Observation observation) {}
