package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.AdjustedLine;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Distances between frames of a row, from the rows alone and from all readings of the frames.
 *
 * @param rows the readings of each row
 * @param line the rows adjusted by themselves
 * @param frames all readings of the frames
 */
record Spacings(Map<FrameRow, List<Reading>> rows, AdjustedLine line, FrameNetwork frames) {

  List<Reading> readings(FrameRow row) {
    return rows.getOrDefault(row, List.of());
  }

  /** From the row's own readings. */
  Optional<Linearised> observed(FrameRow row, int from, int to) {
    return rows.containsKey(row) && line.connected(row.station(from), row.station(to))
        ? Optional.of(line.linearisedDifference(row.station(from), row.station(to)))
        : Optional.empty();
  }

  /** From all readings of the frames, if they agree and the row's are all among them. */
  Optional<Linearised> decided(FrameRow row, int from, int to) {
    return frames.agrees() && frames.holds(readings(row))
        ? frames.spacing(row, from, to)
        : Optional.empty();
  }

  /** What is decided on: adjusted where that can be relied on, else as observed. */
  Optional<Linearised> best(FrameRow row, int from, int to) {
    Optional<Linearised> observed = observed(row, from, to);
    return observed.isEmpty() ? observed : decided(row, from, to).or(() -> observed);
  }

  /** At the eaves from feet and leans, if nobody read it there. */
  Optional<Linearised> derived(FrameRow eave, int from, int to) {
    return observed(eave, from, to).isPresent() ? Optional.empty() : decided(eave, from, to);
  }

  /** The readings at the feet of that side, and of the two leans. */
  List<Reading> behindDerived(FrameRow eave, int from, int to) {
    List<Reading> behind = new ArrayList<>(readings(eave));
    behind.addAll(readings(new FrameRow("base", eave.side())));
    behind.addAll(frames.leanReadings(eave.side() + from, Axis.ALONG));
    behind.addAll(frames.leanReadings(eave.side() + to, Axis.ALONG));
    return behind;
  }

  /** Eave less base, both from all readings of the frames or both from the rows. */
  Optional<Linearised> match(FrameRow base, FrameRow eave, int from, int to) {
    Optional<Linearised> foot = decided(base, from, to);
    Optional<Linearised> top = decided(eave, from, to);
    if (observed(base, from, to).isPresent() && foot.isPresent() && top.isPresent()) {
      return Optional.of(top.get().minus(foot.get()));
    }
    return observed(base, from, to)
        .flatMap(below -> observed(eave, from, to).map(above -> above.minus(below)));
  }

  List<Reading> behindMatch(FrameRow base, FrameRow eave, int from, int to) {
    if (derived(eave, from, to).isPresent()) {
      return behindDerived(eave, from, to);
    }
    List<Reading> both = new ArrayList<>(readings(base));
    both.addAll(readings(eave));
    return both;
  }
}
