package datumpeg.bridge.collect;

/** What became of a link that was, or shall be, open. */
public enum LinkState {
  /** It cannot be opened now and is tried again. */
  AWAY,
  /** It is there again. */
  RETURNED,
  /** It is open, and nothing came for long. */
  SILENT
}
