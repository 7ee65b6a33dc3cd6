/**
 * TOML text as tables and values that know where they stand. The one place that uses the TOML
 * library.
 *
 * <p>A reader asks a table for each key it knows and then refuses the others, so the keys it asked
 * for are the known ones. What is wrong is collected, not thrown: one reading finds all of it.
 *
 * <p>Here: syntax, types, places, quantities written as text. Not here: which keys a file must
 * have. Read {@link datumpeg.bridge.toml.TomlText} first, then {@link datumpeg.bridge.toml.Table}.
 */
@NullMarked
package datumpeg.bridge.toml;

import org.jspecify.annotations.NullMarked;
