package datumpeg.bridge.link;

/**
 * Hears a link, always on the link's one thread. After {@link #lost} or {@link #ended} nothing more
 * comes.
 */
public interface LinkListener {

  /** Bytes came. */
  void received(Chunk chunk);

  /** The connection is gone; what was pending of a message is not a reading. */
  void lost(LinkLostException loss);

  /** There is nothing more to come, as was to be expected: a capture ran to its end. */
  void ended();
}
