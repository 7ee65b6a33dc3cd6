/**
 * What a connection is and how it fails.
 *
 * <p>Here: the text by which a person names a link, the bytes it delivers with their times, and the
 * two ways it fails (cannot be opened; was lost). {@link datumpeg.bridge.link.ReturningLink} keeps
 * a link of any kind and opens it again. Not here: how one kind of link works (the rooms below),
 * what the bytes mean (room frame). Read {@link datumpeg.bridge.link.Link} first.
 */
@NullMarked
package datumpeg.bridge.link;

import org.jspecify.annotations.NullMarked;
