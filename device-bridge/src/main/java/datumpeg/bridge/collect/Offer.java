package datumpeg.bridge.collect;

/** What became of a value that arrived. */
public enum Offer {
  /** It waits to be accepted for the current target. */
  WAITING,
  /** No target is asked for; it was put aside. */
  NO_TARGET,
  /** The target asks for a length and an angle came, or the other way round; it was put aside. */
  OTHER_QUANTITY,
  /** The value cannot be one of the target, such as a distance of zero; it was put aside. */
  IMPOSSIBLE
}
