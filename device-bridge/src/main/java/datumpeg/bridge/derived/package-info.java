/**
 * What follows from a record and was worked out before: kept beside it, outside its chains, so that
 * a large record opens at once. All of it can be thrown away and worked out again.
 *
 * <p>Here: a job in one line with its stages, its outcomes, and what a store of them must do. Not
 * here: how they are worked out (room jobs), tables ({@code record.sqlite}). Read {@link
 * datumpeg.bridge.derived.DerivedStore} first.
 */
@NullMarked
package datumpeg.bridge.derived;

import org.jspecify.annotations.NullMarked;
