package datumpeg.desktop.control;

import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Shows a choice by its name, in a box that cannot be typed into. */
public final class ChoiceName extends StringConverter<Choice> {
  @Override
  public String toString(@Nullable Choice choice) {
    return choice == null ? "" : choice.name();
  }

  /** Nothing is ever read back. */
  @Override
  public Choice fromString(String name) {
    throw new UnsupportedOperationException("something is chosen, not typed: " + name);
  }
}
