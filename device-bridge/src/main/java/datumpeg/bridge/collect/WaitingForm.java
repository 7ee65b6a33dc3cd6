package datumpeg.bridge.collect;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;

/** How what waits stands in a line of a file. */
interface WaitingForm<T> {

  /** Puts all of it; the name {@code order} is taken. */
  JsonObject.Builder written(T waiting);

  /**
   * What {@link #written} wrote.
   *
   * @throws JsonException if a member is missing or of the wrong type
   * @throws IllegalArgumentException if a member cannot be made sense of
   */
  T read(JsonObject line) throws JsonException;

  /** What makes two lines the same. */
  String identity(T waiting);
}
