package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.frame.modbus.WordOrder;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.meter.MeterLanguage;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.learn.BlockSearch.Field;
import datumpeg.bridge.meter.learn.BlockSearch.Laying;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Links whose channels each deliver whole values: characteristics, blocks of registers. */
final class ChannelSearch {
  private static final String UUID = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

  private final List<Shown> all;
  private final List<Displayed> displayed;

  private ChannelSearch(List<Shown> all) {
    this.all = all;
    this.displayed = all.stream().map(Shown::displayed).toList();
  }

  static List<Proposal> find(List<Shown> all, Optional<RegisterBlock> block) {
    ChannelSearch search = new ChannelSearch(all);
    List<Proposal> found = new ArrayList<>();
    for (String channel : search.channels()) {
      if (block.isPresent() && channel.equals(block.get().channel())) {
        search.registers(channel, block.get(), found);
      } else if (channel.matches(UUID)) {
        search.characteristic(channel, found);
      }
    }
    return found;
  }

  private Set<String> channels() {
    Set<String> channels = new LinkedHashSet<>();
    all.forEach(shown -> shown.pieces().forEach(piece -> channels.add(piece.channel())));
    return channels;
  }

  private void characteristic(String channel, List<Proposal> found) {
    for (Field field : fields(channel, List.of(Laying.LITTLE), 1)) {
      add(
          new CharacteristicValues(channel, presentation(field), field.offset()),
          field,
          "characteristic " + channel + ": ",
          found);
    }
    PresentationFormat text =
        new PresentationFormat(GattFormat.UTF8, 0, Scale.units(displayed.get(0).unit()).get(0));
    CharacteristicValues values = new CharacteristicValues(channel, text, 0);
    MeterProfile profile =
        Fitting.profile(values, MeterProfile.Sign.AS_SENT, MeterProfile.AngleZero.PLUMB);
    if (Fitting.fits(profile, all)) {
      found.add(new Proposal(profile, "characteristic " + channel + ": text"));
    }
  }

  private void registers(String channel, RegisterBlock block, List<Proposal> found) {
    for (Field field : fields(channel, List.of(Laying.values()), 2)) {
      int count = field.format().byteCount() / 2;
      if (field.format().byteCount() % 2 == 0) {
        RegisterBlock narrow =
            new RegisterBlock(
                block.station(),
                block.table(),
                block.first() + field.offset() / 2,
                count,
                block.everyMillis());
        found.add(
            new Proposal(
                Fitting.profile(
                    new Registers(narrow, presentation(field), order(field)),
                    field.scale().sign(),
                    field.scale().zero()),
                "register %d (%s), word order %s: %s"
                    .formatted(
                        narrow.first(),
                        narrow.table().word(),
                        order(field).word(),
                        field.words())));
      }
    }
  }

  private static WordOrder order(Field field) {
    return switch (field.laying()) {
      case BIG -> WordOrder.ABCD;
      case LITTLE -> WordOrder.DCBA;
      case WORDS_SWAPPED -> WordOrder.CDAB;
      case BYTES_SWAPPED -> WordOrder.BADC;
    };
  }

  private static PresentationFormat presentation(Field field) {
    return new PresentationFormat(field.format(), field.scale().exponent(), field.scale().unit());
  }

  private void add(MeterLanguage language, Field field, String words, List<Proposal> found) {
    MeterProfile profile = Fitting.profile(language, field.scale().sign(), field.scale().zero());
    if (Fitting.fits(profile, all)) {
      found.add(new Proposal(profile, words + field.words()));
    }
  }

  /** The last value of each reading; none where one is missing or they differ in length. */
  private List<Field> fields(String channel, List<Laying> layings, int step) {
    List<Bytes> blocks = new ArrayList<>();
    for (Shown shown : all) {
      @Nullable Bytes last = null;
      for (Shown.Piece piece : shown.pieces()) {
        last = piece.channel().equals(channel) ? piece.bytes() : last;
      }
      if (last == null || (!blocks.isEmpty() && last.length() != blocks.get(0).length())) {
        return List.of();
      }
      blocks.add(last);
    }
    return new BlockSearch(blocks, displayed).fields(layings, step);
  }
}
