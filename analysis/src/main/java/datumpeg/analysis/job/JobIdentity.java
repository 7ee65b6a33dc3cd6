package datumpeg.analysis.job;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which job, where and whose.
 *
 * @param id letters, digits and -
 * @param slabBy who laid the slab, empty if not said
 * @param bearingRadians direction from end 1 to end n, clockwise from north
 */
public record JobIdentity(
    String id,
    String organisation,
    String name,
    String site,
    String crew,
    String slabBy,
    Optional<LocalDate> started,
    OptionalDouble bearingRadians) {}
