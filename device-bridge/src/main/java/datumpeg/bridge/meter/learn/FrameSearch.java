package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.binary.ByteOrder;
import datumpeg.bridge.frame.binary.CheckSum;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.learn.BlockSearch.Field;
import datumpeg.bridge.meter.learn.BlockSearch.Laying;
import java.util.ArrayList;
import java.util.List;

/**
 * Meters that send binary frames of one length. The length is the shortest after which some bytes
 * always come again; those bytes are what a frame is known by.
 */
final class FrameSearch {
  private static final int LEAST_LENGTH = 3;
  private static final int MOST_LENGTH = 64;
  private static final int KNOWN_BYTES = 2;

  /** What came last is enough: a meter that never stops must not make the search long. */
  private static final int MOST_BYTES = 16_384;

  private final List<Shown> all;
  private final List<Displayed> displayed;
  private final Bytes stream;
  private final List<Integer> ends = new ArrayList<>();

  private FrameSearch(List<Shown> all) {
    this.all = all;
    this.displayed = all.stream().map(Shown::displayed).toList();
    Bytes joined = Bytes.empty();
    for (Shown shown : all) {
      Bytes ofReading = Bytes.joined(shown.pieces().stream().map(Shown.Piece::bytes).toList());
      int over = Math.max(0, ofReading.length() - MOST_BYTES / all.size());
      joined = joined.plus(ofReading.slice(over, ofReading.length()));
      ends.add(joined.length());
    }
    this.stream = joined;
  }

  static List<Proposal> find(List<Shown> all) {
    return new FrameSearch(all).find();
  }

  private List<Proposal> find() {
    List<Proposal> found = new ArrayList<>();
    int most = Math.min(MOST_LENGTH, stream.length() / all.size());
    for (int length = LEAST_LENGTH; length <= most && found.isEmpty(); length++) {
      for (int phase = 0; phase < length; phase++) {
        ofPhase(length, phase, found);
      }
    }
    return found;
  }

  /** Frames that begin at the phase and every length after it. */
  private void ofPhase(int length, int phase, List<Proposal> found) {
    int known = knownBytes(length, phase);
    if (known == 0 || (phase > 0 && isKnown(length, phase - 1))) {
      return;
    }
    List<Bytes> blocks = new ArrayList<>();
    for (int end : ends) {
      int start = phase + Math.floorDiv(end - phase - length, length) * length;
      if (start < 0) {
        return;
      }
      blocks.add(stream.slice(start, start + length));
    }
    CheckSum checkSum = checkSum(length, phase);
    for (Field field : new BlockSearch(blocks, displayed).fields(layings(), 1)) {
      int start = Math.min(known, field.offset());
      if (start > 0 && field.end() <= length - checkSum.byteCount()) {
        propose(field, blocks.get(0).slice(0, start), length, checkSum, found);
      }
    }
  }

  private static List<Laying> layings() {
    return List.of(Laying.LITTLE, Laying.BIG);
  }

  private void propose(
      Field field, Bytes start, int length, CheckSum checkSum, List<Proposal> found) {
    ByteOrder order = field.laying() == Laying.BIG ? ByteOrder.BIG : ByteOrder.LITTLE;
    Scale scale = field.scale();
    FrameShape shape =
        new FrameShape(
            start,
            length,
            checkSum,
            field.offset(),
            order,
            new PresentationFormat(field.format(), scale.exponent(), scale.unit()));
    MeterProfile profile = Fitting.profile(new BinaryFrames(shape), scale.sign(), scale.zero());
    if (Fitting.fits(profile, all)) {
      found.add(
          new Proposal(
              profile,
              "frames of %d bytes that begin with %s: %s"
                  .formatted(length, start.hex(), field.words())));
    }
  }

  /** How many bytes from the phase on are always the same, at most two; 0 where the first is 0. */
  private int knownBytes(int length, int phase) {
    int known = 0;
    while (known < KNOWN_BYTES && known < length - 1 && isKnown(length, phase + known)) {
      known++;
    }
    return known > 0 && stream.at(phase) != 0 ? known : 0;
  }

  private boolean isKnown(int length, int from) {
    for (int index = from % length + length; index < stream.length(); index += length) {
      if (stream.at(index) != stream.at(from % length)) {
        return false;
      }
    }
    return true;
  }

  /** The check sum that all frames of the stream bear out; none where there is no such. */
  private CheckSum checkSum(int length, int phase) {
    for (CheckSum kind : List.of(CheckSum.CRC16, CheckSum.SUM, CheckSum.XOR)) {
      boolean fits = length > kind.byteCount() + 1;
      for (int start = phase; fits && start + length <= stream.length(); start += length) {
        fits = kind.fits(stream.slice(start, start + length));
      }
      if (fits) {
        return kind;
      }
    }
    return CheckSum.NONE;
  }
}
