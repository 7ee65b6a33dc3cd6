package datumpeg.bridge.meter;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.frame.gatt.GattDecoding;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.link.ble.BleLink;
import datumpeg.bridge.link.ble.GattNames;
import datumpeg.bridge.meter.MeterLanguage.DescribedValues;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterStream.Message;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * The channels of one link, kept apart: each has its own unfinished line, and what a characteristic
 * says of itself holds for its own values. One thread.
 */
final class ChannelMessages {
  /** A link listens to eight at most; a capture could name any number. */
  private static final int MOST_CHANNELS = 32;

  private final MeterLanguage language;
  private final Map<String, MessageReader> readers = new HashMap<>();
  private final Map<String, GattDecoding> described = new HashMap<>();

  ChannelMessages(MeterLanguage language) {
    this.language = language;
  }

  /** Takes the next bytes of a channel; gives the messages they complete, in order. */
  void accept(Bytes bytes, String channel, Consumer<Message> messages) {
    GattDecoding decoding = described.get(channel);
    if (channel.equals(GattNames.BATTERY_LEVEL)) {
      messages.accept(battery(bytes));
    } else if (channel.endsWith(BleLink.DESCRIPTION)) {
      describe(channel.substring(0, channel.length() - BleLink.DESCRIPTION.length()), bytes);
    } else if (decoding != null) {
      messages.accept(new Message(bytes, decoding.decode(bytes)));
    } else {
      reader(channel).accept(bytes, channel, messages);
    }
  }

  private static Message battery(Bytes bytes) {
    Decoded status =
        bytes.length() == 1
            ? new NotAReading(Reason.STATUS, "the meter's battery is at " + bytes.at(0) + " %")
            : new NotAReading(Reason.MALFORMED, "a battery level of " + bytes.length() + " bytes");
    return new Message(bytes, status);
  }

  private void describe(String channel, Bytes descriptor) {
    if (language instanceof DescribedValues && described.size() < MOST_CHANNELS) {
      PresentationFormat.of(descriptor)
          .ifPresent(format -> described.put(channel, new GattDecoding(format)));
    }
  }

  /** Beyond the most channels all others share one: their bytes are no meter's. */
  private MessageReader reader(String channel) {
    String key = readers.size() < MOST_CHANNELS || readers.containsKey(channel) ? channel : "";
    return readers.computeIfAbsent(key, name -> MessageReader.of(ofOneChannel()));
  }

  private MeterLanguage ofOneChannel() {
    return language instanceof DescribedValues text
        ? new TextLines(text.maximumLineBytes(), text.defaultUnit())
        : language;
  }

  /** The link was lost: drops what was pending of any channel and returns it. */
  Bytes discardPending() {
    return readers.values().stream()
        .map(MessageReader::discardPending)
        .reduce(Bytes.empty(), Bytes::plus);
  }

  /** How many messages were dropped because they were too long. */
  long overflowCount() {
    return readers.values().stream().mapToLong(MessageReader::overflowCount).sum();
  }
}
