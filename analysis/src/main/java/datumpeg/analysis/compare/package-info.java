/**
 * Crews, sites, slab layers or meters compared by what was found of one check.
 *
 * <p>Here: groups of jobs with mean, scatter and their uncertainty; what differs by more than
 * chance gives; what can be concluded from so many jobs, and what cannot because two matters never
 * vary apart. Not here: how one job or one check went over time (room trend). Read {@link
 * datumpeg.analysis.compare.Comparison} first.
 */
@NullMarked
package datumpeg.analysis.compare;

import org.jspecify.annotations.NullMarked;
