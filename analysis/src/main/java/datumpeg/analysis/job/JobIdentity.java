package datumpeg.analysis.job;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Which job, where and whose.
 *
 * @param id letters, digits and -
 * @param slabBy who laid the slab, empty if not said
 * @param bearingRadians direction from end 1 to end n, clockwise from north
 * @param erectedFrom the end frame at which the erection begins, 1 or n
 */
public record JobIdentity(
    String id,
    String organisation,
    String name,
    String site,
    String crew,
    String slabBy,
    Optional<LocalDate> started,
    OptionalDouble bearingRadians,
    OptionalInt erectedFrom) {}
