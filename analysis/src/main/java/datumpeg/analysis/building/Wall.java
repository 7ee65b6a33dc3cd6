package datumpeg.analysis.building;

import java.util.Arrays;
import java.util.Optional;

/** One of the four walls. */
public enum Wall {
  END_1("end 1"),
  END_N("end n"),
  SIDE_A("side A"),
  SIDE_B("side B");

  private final String text;

  Wall(String text) {
    this.text = text;
  }

  /** How the wall is written in a job file. */
  public String text() {
    return text;
  }

  public boolean isEnd() {
    return this == END_1 || this == END_N;
  }

  public static Optional<Wall> ofText(String text) {
    return Arrays.stream(values()).filter(wall -> wall.text.equals(text)).findFirst();
  }
}
