package datumpeg.bridge.record;

import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.OptionalDouble;

/** Works out again the number kept beside a reading, so that it can be held against its text. */
@FunctionalInterface
public interface DerivedNumber {
  /** For a caller that cannot tell: no number is checked. */
  DerivedNumber NOT_CHECKED = reading -> OptionalDouble.empty();

  /**
   * @param reading whose {@code siValue} is to be left aside: it is what is being checked
   * @return metres, radians, or yes = 1 and no = 0; empty if this reading cannot be worked out
   */
  OptionalDouble of(ReadingEntry reading);
}
