package datumpeg.analysis.slip;

import datumpeg.analysis.measuring.WrittenValue;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** One slip that may have happened, and what it says would have been read without it. */
public sealed interface Slip {
  SlipKind kind();

  /** The readings it touches. */
  List<SlipReading> readings();

  /** By reading id, in metres or radians, what would have been read instead; see offsets too. */
  Map<String, Double> instead();

  /** What happened, in words, without numbers of the result. */
  String words();

  /** The slips it consists of: itself, or the two that happened at once. */
  default List<Slip> parts() {
    return List.of(this);
  }

  /** How many offsets of unknown size are to be estimated. */
  default int unknownOffsets() {
    return hasUnknownOffset() ? 1 : 0;
  }

  /** Whether one unknown offset, the same in all its readings, is to be estimated. */
  default boolean hasUnknownOffset() {
    return false;
  }

  /** Whether the meter was turned, so that its shared errors have the other sign too. */
  default boolean turnsTheMeter() {
    return false;
  }

  /** Readings noted against each other's targets: the first of one with the first of the other. */
  record Exchanged(List<SlipReading> one, List<SlipReading> other) implements Slip {
    public Exchanged {
      one = List.copyOf(one);
      other = List.copyOf(other);
      if (one.isEmpty() || one.size() != other.size()) {
        throw new IllegalArgumentException(
            "exchanged readings: "
                + one.size()
                + " and "
                + other.size()
                + ", expected as many of one as of the other");
      }
    }

    @Override
    public SlipKind kind() {
      return SlipKind.EXCHANGED;
    }

    @Override
    public List<SlipReading> readings() {
      return Stream.concat(one.stream(), other.stream()).toList();
    }

    @Override
    public Map<String, Double> instead() {
      Map<String, Double> instead = new LinkedHashMap<>();
      for (int i = 0; i < one.size(); i++) {
        instead.put(one.get(i).id(), other.get(i).value());
        instead.put(other.get(i).id(), one.get(i).value());
      }
      return instead;
    }

    @Override
    public String words() {
      return one.get(0).targetWords()
          + " and "
          + other.get(0).targetWords()
          + " exchanged"
          + (one.size() > 1 ? ", all " + one.size() + " readings" : "");
    }
  }

  /**
   * A known length counted too much or too little.
   *
   * @param addedMetres what the reading has too much; negative for too little
   * @param step its name, such as "a whole metre"
   */
  record Miscounted(SlipReading reading, SlipKind kind, double addedMetres, String step)
      implements Slip {
    @Override
    public List<SlipReading> readings() {
      return List.of(reading);
    }

    @Override
    public Map<String, Double> instead() {
      return Map.of(reading.id(), reading.value() - addedMetres);
    }

    @Override
    public String words() {
      return step + (addedMetres > 0 ? " added in " : " dropped in ") + reading.targetWords();
    }
  }

  /** Written otherwise than read: digits transposed, or another unit. */
  record Miswritten(SlipReading reading, SlipKind kind, WrittenValue meant, double value)
      implements Slip {
    @Override
    public List<SlipReading> readings() {
      return List.of(reading);
    }

    @Override
    public Map<String, Double> instead() {
      return Map.of(reading.id(), value);
    }

    @Override
    public String words() {
      String noted = DigitSwaps.written(reading).text();
      return kind == SlipKind.TRANSPOSED_DIGITS
          ? "digits transposed in "
              + reading.targetWords()
              + ", noted "
              + noted
              + " for "
              + meant.text()
          : reading.targetWords() + " noted as " + noted + " for " + meant.text();
    }
  }

  /** The sign lost, the face mistaken, or a staff counted from its other end. */
  record Turned(SlipReading reading, SlipKind kind, double value, String words) implements Slip {
    @Override
    public List<SlipReading> readings() {
      return List.of(reading);
    }

    @Override
    public Map<String, Double> instead() {
      return Map.of(reading.id(), value);
    }

    @Override
    public boolean turnsTheMeter() {
      return kind == SlipKind.FACE;
    }
  }

  /** Every target of a set noted for its mirror image on the other side. */
  record Mirrored(List<SlipReading> readings, Map<String, Double> instead, String words)
      implements Slip {
    public Mirrored {
      readings = List.copyOf(readings);
      instead = Map.copyOf(instead);
    }

    @Override
    public SlipKind kind() {
      return SlipKind.SIDES_EXCHANGED;
    }
  }

  /** One offset of unknown size, the same in all its readings. */
  record Offset(List<SlipReading> readings, SlipKind kind) implements Slip {
    public Offset {
      readings = List.copyOf(readings);
    }

    @Override
    public Map<String, Double> instead() {
      return Map.of();
    }

    @Override
    public boolean hasUnknownOffset() {
      return true;
    }

    /** The same, its size being that of an edge, end piece or hook. */
    Offset asEdge() {
      return new Offset(readings, SlipKind.METER_EDGE);
    }

    @Override
    public String words() {
      String first = readings.get(0).targetWords();
      String where =
          readings.size() == 1
              ? first
              : "all " + readings.size() + " readings of one set, beginning with " + first + ",";
      return kind == SlipKind.METER_EDGE
          ? where + " taken from the meter's other edge, or an end piece not reckoned with"
          : where + " wrong by an amount that is none of the usual slips";
    }
  }

  /** Two slips at once, in different readings. */
  record Both(Slip one, Slip other) implements Slip {
    public Both {
      for (SlipReading reading : one.readings()) {
        if (other.readings().stream().anyMatch(r -> r.id().equals(reading.id()))) {
          throw new IllegalArgumentException(
              "two slips at once: both in reading " + reading.id() + ", expected different ones");
        }
      }
    }

    /** The less usual of both. */
    @Override
    public SlipKind kind() {
      return one.kind().compareTo(other.kind()) >= 0 ? one.kind() : other.kind();
    }

    @Override
    public List<SlipReading> readings() {
      return Stream.concat(one.readings().stream(), other.readings().stream()).toList();
    }

    @Override
    public Map<String, Double> instead() {
      Map<String, Double> instead = new LinkedHashMap<>(one.instead());
      instead.putAll(other.instead());
      return instead;
    }

    @Override
    public List<Slip> parts() {
      return List.of(one, other);
    }

    @Override
    public int unknownOffsets() {
      return one.unknownOffsets() + other.unknownOffsets();
    }

    @Override
    public String words() {
      return one.words() + ", and besides " + other.words();
    }
  }
}
