package datumpeg.bridge.cli;

import datumpeg.bridge.mistake.Nearest;
import java.util.List;
import java.util.Optional;
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
      Optional<String> nearest = nearest(word, unmatched);
      String unknown =
          word.startsWith("-") ? "The option '%s' is not known" : "The word '%s' is not expected";
      return String.format(unknown, word)
          + nearest.map(known -> "; the nearest is '" + known + "'.").orElse(".");
    }
    String message = String.valueOf(failure.getMessage()).strip();
    return message.endsWith(".") ? message : message + ".";
  }

  private static Optional<String> nearest(String word, UnmatchedArgumentException unmatched) {
    List<String> suggestions = unmatched.getSuggestions();
    return suggestions.isEmpty()
        ? Nearest.of(word, unmatched.getCommandLine().getSubcommands().keySet())
        : Optional.of(suggestions.get(0));
  }
}
