package datumpeg.bridge.frame;

/** What kind of quantity a line carries. */
public enum QuantityKind {
  LENGTH,
  ANGLE
}
