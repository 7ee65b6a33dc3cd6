package datumpeg.analysis.uncertainty;

/**
 * Where a part of an uncertainty comes from, told apart by what would lessen it: the rows of an
 * uncertainty budget (JCGM 200:2012, 2.33).
 */
public enum Origin {
  /** Each reading's own scatter: repeats shrink it. */
  SCATTER,
  /** An error that readings of a meter share in a session: a check of the meter shrinks it. */
  METER,
  /** How far a mark is beside its point: a point marked once has none. */
  DEFINITION,
  /** The temperature of the steel, as far as nobody read it. */
  TEMPERATURE,
  /** The bow of a member, evenly distributed within what its straightness allows. */
  FORM,
  /** Any other, which no way of measuring the same shrinks. */
  OTHER
}
