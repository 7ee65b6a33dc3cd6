package datumpeg.analysis.slip;

/**
 * What people do wrong, the more usual first (common practice, no source). The order decides only
 * between slips that the readings cannot tell apart.
 */
public enum SlipKind {
  /** Two readings noted against each other's targets. */
  EXCHANGED,
  /** A whole metre or foot dropped or added. */
  WHOLE_UNIT,
  /** Every target of a set noted for its mirror image on the other side of the building. */
  SIDES_EXCHANGED,
  /** Two neighbouring digits transposed as the value was written. */
  TRANSPOSED_DIGITS,
  /** Metres noted as feet, or feet as metres. */
  UNIT_MISTAKEN,
  /** A sign lost or added. */
  SIGN,
  /** A tilt noted for the meter's other face. */
  FACE,
  /** A staff counted from its other end. */
  STAFF_INVERTED,
  /** A mark of the tape too far: 10 mm or 100 mm. */
  TAPE_MARK,
  /** The meter's other edge, an end piece or a hook not reckoned with. */
  METER_EDGE,
  /** An offset that is none of these. */
  SIZE_UNKNOWN
}
