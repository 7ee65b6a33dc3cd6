/**
 * JSON as small trees: reading, writing, and the canonical form that digests are taken of. The one
 * place that uses the JSON library.
 *
 * <p>Here: the values, the reader, the writer and the canonical form (RFC 8785, restricted to
 * strings, integers, booleans, null, arrays and objects). Not here: what any particular document
 * means; streaming of large documents. Read {@link datumpeg.bridge.json.JsonValue} first.
 */
@NullMarked
package datumpeg.bridge.json;

import org.jspecify.annotations.NullMarked;
