package datumpeg.desktop.form;

import java.util.function.Consumer;

/**
 * What the fields of a form are given to act on. The JavaFX thread only.
 *
 * @param edits what a user does to the entries
 * @param focused is told the path of the field that took the keys; an empty one for none
 */
record FormActs(FormEdits edits, Consumer<String> focused) {}
