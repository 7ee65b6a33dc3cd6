package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.frame.ByteRows;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.meter.learn.Displayed;
import datumpeg.bridge.meter.learn.Learning;
import datumpeg.bridge.meter.learn.Proposal;
import datumpeg.bridge.meter.learn.Shown;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The conversation of learning: readings are asked for until one way of reading the bytes is left.
 * Works with a person and with lines from a pipe. One thread.
 */
final class MetersLearn {
  private static final int MOST_READINGS = 8;
  private static final long PATIENCE_MILLIS = 5000;

  private final PrintStream out;
  private final BufferedReader in;
  private final Link link;
  private final HeardBytes heard;
  private final boolean canBeTold;
  private final Bytes trigger;
  private final Learning learning;
  private final List<Shown> all = new ArrayList<>();

  /**
   * @param canBeTold whether the meter measures when an empty line is typed
   * @param trigger what is sent then
   */
  MetersLearn(
      DatumpegCommand program,
      Link link,
      HeardBytes heard,
      boolean canBeTold,
      Bytes trigger,
      Learning learning) {
    this.out = program.console().err();
    this.in =
        new BufferedReader(new InputStreamReader(program.console().in(), StandardCharsets.UTF_8));
    this.link = link;
    this.heard = heard;
    this.canBeTold = canBeTold;
    this.trigger = trigger;
    this.learning = learning;
  }

  /**
   * What was found; empty if the person quits.
   *
   * @throws InputException if nothing fits, or the input ends too early
   */
  Optional<Proposal> converse() throws InterruptedException {
    out.println(
        "Listening on " + link.address().text() + ". Three times: take a reading, then type");
    out.println("what the display shows with its unit (12.345 m, -0.35 deg), and press Enter.");
    if (canBeTold) {
      out.println("An empty line makes the meter measure.");
    }
    out.println("'quit' ends without writing anything.");
    while (true) {
      Optional<Displayed> displayed = ask();
      if (displayed.isEmpty()) {
        return Optional.empty();
      }
      hear(displayed.get());
      if (all.size() >= Learning.READINGS_ASKED) {
        Optional<Proposal> settled = settle();
        if (settled.isPresent()) {
          return settled;
        }
      }
    }
  }

  private Optional<Displayed> ask() {
    out.print("Reading " + (all.size() + 1) + ", the display shows: ");
    out.flush();
    while (true) {
      String line = line().strip();
      if (line.equals("quit")) {
        return Optional.empty();
      }
      Optional<Displayed> displayed = Displayed.parse(line);
      if (displayed.isPresent() && fitsFirst(displayed.get())) {
        return displayed;
      }
      if (line.isEmpty() && canBeTold) {
        link.send(trigger);
      } else {
        out.print(again(line, displayed));
        out.flush();
      }
    }
  }

  private boolean fitsFirst(Displayed displayed) {
    return all.isEmpty()
        || all.get(0).displayed().unit().dimension() == displayed.unit().dimension();
  }

  private static String again(String line, Optional<Displayed> displayed) {
    return displayed.isPresent()
        ? "  Lengths and angles cannot be mixed; the display shows: "
        : "  '%s' is not one number with its unit, such as 12.345 m; the display shows: "
            .formatted(line.replaceAll("\\p{C}", "?"));
  }

  private void hear(Displayed displayed) throws InterruptedException {
    List<Shown.Piece> pieces = heard.take(PATIENCE_MILLIS);
    if (pieces.isEmpty()) {
      out.println(
          "  Nothing came from the meter since the reading before. Take the reading first, then"
              + " type it; if still nothing comes, try another baud rate, and see 'meters doctor'.");
      return;
    }
    Bytes bytes = Bytes.joined(pieces.stream().map(Shown.Piece::bytes).toList());
    List<String> rows = ByteRows.of(bytes);
    out.println("  received " + bytes.length() + " bytes, the last of them:");
    rows.subList(Math.max(0, rows.size() - 2), rows.size()).forEach(row -> out.println("  " + row));
    all.add(new Shown(pieces, displayed));
  }

  private Optional<Proposal> settle() {
    List<Proposal> proposals = learning.proposals(all);
    if (proposals.isEmpty()) {
      leaveOut();
      proposals = learning.proposals(all);
    }
    if (proposals.isEmpty()) {
      requireHope();
      out.println("  Nothing fits these readings yet; one more, please.");
      return Optional.empty();
    }
    if (proposals.size() == 1) {
      return Optional.of(proposals.get(0));
    }
    if (all.size() < MOST_READINGS) {
      out.println(
          "  "
              + proposals.size()
              + " ways of reading the bytes fit. One more reading, please, as different as can be:"
              + " far longer, or to the other side.");
      return Optional.empty();
    }
    return Optional.of(choice(proposals));
  }

  /** A display read wrongly once must not spoil the others. */
  private void leaveOut() {
    for (int i = 0; all.size() > Learning.READINGS_ASKED && i < all.size(); i++) {
      List<Shown> others = new ArrayList<>(all);
      Shown doubted = others.remove(i);
      if (!learning.proposals(others).isEmpty()) {
        out.println(
            "  Without '" + doubted.displayed().text() + "' the others fit together; left out.");
        all.remove(i);
        return;
      }
    }
  }

  private void requireHope() {
    if (all.size() >= MOST_READINGS) {
      throw new InputException(
          "No way of reading the bytes fits what the display showed. Usual causes: another baud rate"
              + " (give it with the link, ?baud=…), a display that shows something else than what is"
              + " sent (another reference edge, another unit), a meter whose messages differ in"
              + " length. 'meters watch' shows the bytes.");
    }
  }

  private Proposal choice(List<Proposal> proposals) {
    out.println("  Several ways of reading the bytes still fit:");
    for (int i = 0; i < proposals.size(); i++) {
      out.println("  " + (i + 1) + "  " + proposals.get(i).words());
    }
    while (true) {
      out.print("Which one (1 to " + proposals.size() + ")? ");
      out.flush();
      String line = line().strip();
      if (line.matches("[0-9]{1,3}")
          && Integer.parseInt(line) >= 1
          && Integer.parseInt(line) <= proposals.size()) {
        return proposals.get(Integer.parseInt(line) - 1);
      }
    }
  }

  private String line() {
    try {
      String line = in.readLine();
      if (line == null) {
        throw new InputException(
            "The input ended after "
                + all.size()
                + " reading(s) with more than one or no way of reading the bytes left; expected"
                + " further readings. Nothing was written.");
      }
      return line;
    } catch (IOException e) {
      throw new OuterWorldException("The input could not be read: " + e.getMessage() + ".", e);
    }
  }
}
