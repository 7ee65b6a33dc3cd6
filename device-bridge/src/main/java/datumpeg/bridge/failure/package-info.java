/**
 * The three ways a command can fail that are not our defect: what was given is wrong, the outer
 * world gave way, the record does not add up. Each carries its exit status.
 *
 * <p>Here: the base types only. Not here: exceptions of one room, which extend these beside the
 * code that throws them. Read {@link datumpeg.bridge.failure.FailureException} first.
 */
@NullMarked
package datumpeg.bridge.failure;

import org.jspecify.annotations.NullMarked;
