package datumpeg.bridge.link;

import java.util.Locale;

/**
 * Registers of a Modbus station that are asked for together.
 *
 * @param station 1 to 247
 * @param table which of the station's two tables of registers
 * @param first the address of the first as it goes over the line, from 0
 * @param count 1 to 125, as many as one answer holds (Modbus application protocol V1.1b3, 6.3)
 * @param everyMillis how often it is asked; 0 = only when somebody asks
 */
public record RegisterBlock(int station, Table table, int first, int count, int everyMillis) {

  /** The two tables of registers. */
  public enum Table {
    /** Function 3. */
    HOLDING,
    /** Function 4. */
    INPUT;

    /** How profiles name it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public RegisterBlock {
    require("station", station, 1, 247);
    require("first register", first, 0, 65535);
    require("number of registers", count, 1, 125);
    require("time between two questions in ms", everyMillis, 0, 3_600_000);
    require("last register", first + count - 1, 0, 65535);
  }

  private static void require(String what, int found, int least, int most) {
    if (found < least || found > most) {
      throw new IllegalArgumentException(
          "the " + what + " is " + found + "; expected " + least + " to " + most);
    }
  }

  /** The same registers, asked for only when somebody asks. */
  public RegisterBlock onDemand() {
    return new RegisterBlock(station, table, first, count, 0);
  }

  /** The channel on which its answers come. */
  public String channel() {
    return table.word() + "-" + first + "@" + station;
  }
}
