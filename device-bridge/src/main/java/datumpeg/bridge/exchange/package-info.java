/**
 * Tables that come in from outside, readings written in a spreadsheet, and tables that go out,
 * trends and comparisons. The one place that uses the CSV library.
 *
 * <p>Here: columns by name, each row's check against the job's plan, all rows or none. Not here:
 * the record's storage, captures, the merging of records. Read {@link
 * datumpeg.bridge.exchange.TableIntake} first.
 */
@NullMarked
package datumpeg.bridge.exchange;

import org.jspecify.annotations.NullMarked;
