package datumpeg.analysis.conform;

import java.util.OptionalDouble;

/**
 * The limits of deviation for one outcome, and who says so.
 *
 * @param lower least permitted deviation in the outcome's SI unit; empty = none, for unsigned
 *     values
 * @param upper greatest permitted deviation
 * @param source as printed, with clause and edition, and "verify against your copy" where due
 */
public record Limits(OptionalDouble lower, OptionalDouble upper, String source) {}
