package datumpeg.bridge.cli;

import java.util.List;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Words for a command line that cannot be understood. */
final class Misuse {
  private Misuse() {}

  /** What is wrong, the nearest known word where there is one, and where the help is. */
  static String sentence(ParameterException failure) {
    String help = "See '" + failure.getCommandLine().getCommandSpec().qualifiedName() + " --help'.";
    return finding(failure) + " " + help;
  }

  private static String finding(ParameterException failure) {
    if (failure instanceof UnmatchedArgumentException unmatched
        && !unmatched.getUnmatched().isEmpty()) {
      String word = unmatched.getUnmatched().get(0);
      List<String> nearest = unmatched.getSuggestions();
      String unknown =
          word.startsWith("-") ? "The option '%s' is not known" : "The word '%s' is not expected";
      return String.format(unknown, word)
          + (nearest.isEmpty() ? "." : "; the nearest is '" + nearest.get(0) + "'.");
    }
    String message = String.valueOf(failure.getMessage()).strip();
    return message.endsWith(".") ? message : message + ".";
  }
}
