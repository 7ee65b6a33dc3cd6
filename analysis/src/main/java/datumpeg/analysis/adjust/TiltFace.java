package datumpeg.analysis.adjust;

/** Which way round a tilt meter was read: its zero error keeps its sign, the tilt changes it. */
public enum TiltFace {
  /** As the target's positive direction. */
  ONE(1),
  /** Turned end for end. */
  TWO(-1);

  private final int sign;

  TiltFace(int sign) {
    this.sign = sign;
  }

  /** Sign with which the tilt enters the reading. */
  public int sign() {
    return sign;
  }
}
