/**
 * What any bytes may be thrown at: each decoder, and the parsers of profiles, job files, captures
 * and of what is typed. The short form runs with the tests, the long one with the profile {@code
 * fuzz}.
 */
@NullMarked
package datumpeg.bridge.fuzz;

import org.jspecify.annotations.NullMarked;
