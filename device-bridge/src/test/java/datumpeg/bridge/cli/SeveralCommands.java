package datumpeg.bridge.cli;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Several commands in one process of their own, each told of with its exit status. */
final class SeveralCommands {
  private SeveralCommands() {}

  /**
   * Runs them.
   *
   * @param arguments a command line each, without spaces in its words; last {@code --record FILE}
   */
  public static void main(String[] arguments) {
    int count = arguments.length - 2;
    List<String> record = List.of(arguments).subList(count, count + 2);
    for (String line : Arrays.copyOf(arguments, count)) {
      DatumpegCommand program = new DatumpegCommand(Console.ofProcess());
      String[] words =
          Stream.concat(Stream.of(line.split(" ", -1)), record.stream()).toArray(String[]::new);
      int status = new CommandRunner(program, BridgeCommands.of(program)).run(words);
      System.err.println("status " + status + " of " + line);
    }
  }
}
