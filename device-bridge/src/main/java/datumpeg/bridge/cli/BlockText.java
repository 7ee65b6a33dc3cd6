package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.link.RegisterBlock;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Registers as a person writes them on a command line. */
final class BlockText {
  private static final Pattern BLOCK =
      Pattern.compile("(holding|input):([0-9]{1,5})\\+([0-9]{1,3})@([0-9]{1,3})");

  private BlockText() {}

  /**
   * @throws InputException if it is none
   */
  static RegisterBlock parse(String text) {
    Matcher block = BLOCK.matcher(text);
    if (!block.matches()) {
      throw new InputException(
          "--registers is '"
              + text
              + "'; expected for instance holding:0+10@1, ten holding registers of station 1 from 0.");
    }
    try {
      return new RegisterBlock(
          Integer.parseInt(block.group(4)),
          block.group(1).equals("input") ? RegisterBlock.Table.INPUT : RegisterBlock.Table.HOLDING,
          Integer.parseInt(block.group(2)),
          Integer.parseInt(block.group(3)),
          0);
    } catch (IllegalArgumentException e) {
      throw new InputException("--registers is '" + text + "': " + e.getMessage() + ".", e);
    }
  }
}
