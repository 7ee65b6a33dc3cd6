package datumpeg.bridge.meter;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.GeneralTextLines;
import datumpeg.bridge.frame.TextLineFramer;
import datumpeg.bridge.frame.binary.FixedFramer;
import datumpeg.bridge.frame.binary.FrameDecoding;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.GattDecoding;
import datumpeg.bridge.frame.modbus.RegisterDecoding;
import datumpeg.bridge.frame.nmea.TransducerDecoding;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.PatternLines;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import datumpeg.bridge.meter.MeterStream.Message;
import java.util.function.Consumer;
import java.util.function.Function;

/** Cuts the bytes of one link into messages of one language and reads them. One thread. */
sealed interface MessageReader {

  /** Takes the next bytes; gives the messages they complete, in order. */
  void accept(Bytes bytes, String channel, Consumer<Message> messages);

  /** The link was lost: drops what was pending and returns it. */
  Bytes discardPending();

  /** How many messages were dropped because they were too long. */
  long overflowCount();

  static MessageReader of(MeterLanguage language) {
    if (language instanceof TextLines text) {
      return new GeneralLines(new GeneralTextLines(text.maximumLineBytes(), text.defaultUnit()));
    }
    if (language instanceof TransducerSentences sentences) {
      return new Lines(
          sentences.maximumLineBytes(), new TransducerDecoding(sentences.transducer())::decode);
    }
    if (language instanceof PatternLines lines) {
      return new Lines(lines.maximumLineBytes(), lines.pattern()::decode);
    }
    if (language instanceof BinaryFrames frames) {
      return new Fixed(frames.shape());
    }
    if (language instanceof Registers registers) {
      return new Answers(registers);
    }
    return new Values((CharacteristicValues) language);
  }

  /** Lines of text that carry one value, wherever the bytes happen to be cut. */
  final class GeneralLines implements MessageReader {
    private final GeneralTextLines lines;

    GeneralLines(GeneralTextLines lines) {
      this.lines = lines;
    }

    @Override
    public void accept(Bytes bytes, String channel, Consumer<Message> messages) {
      lines.accept(
          bytes,
          (among, from, to, decoded) -> messages.accept(new Message(among, from, to, decoded)));
    }

    @Override
    public Bytes discardPending() {
      return lines.discardPending();
    }

    @Override
    public long overflowCount() {
      return lines.overflowCount();
    }
  }

  /** Lines of text, wherever the bytes happen to be cut. */
  final class Lines implements MessageReader {
    private final TextLineFramer framer;
    private final Function<Bytes, Decoded> decoding;

    Lines(int maximumLineBytes, Function<Bytes, Decoded> decoding) {
      this.framer = new TextLineFramer(maximumLineBytes);
      this.decoding = decoding;
    }

    @Override
    public void accept(Bytes bytes, String channel, Consumer<Message> messages) {
      framer.accept(bytes, line -> messages.accept(new Message(line, decoding.apply(line))));
    }

    @Override
    public Bytes discardPending() {
      return framer.discardPending();
    }

    @Override
    public long overflowCount() {
      return framer.overflowCount();
    }
  }

  /** One value a notification; what other characteristics say is not for this profile. */
  final class Values implements MessageReader {
    private final String characteristic;
    private final GattDecoding decoding;

    Values(CharacteristicValues language) {
      this.characteristic = language.characteristic();
      this.decoding = new GattDecoding(language.format(), language.offset());
    }

    @Override
    public void accept(Bytes bytes, String channel, Consumer<Message> messages) {
      if (channel.equals(characteristic)) {
        messages.accept(new Message(bytes, decoding.decode(bytes)));
      }
    }

    @Override
    public Bytes discardPending() {
      return Bytes.empty();
    }

    @Override
    public long overflowCount() {
      return 0;
    }
  }

  /** Binary frames of one length. */
  final class Fixed implements MessageReader {
    private final FixedFramer framer;
    private final FrameDecoding decoding;

    Fixed(FrameShape shape) {
      this.framer = new FixedFramer(shape);
      this.decoding = new FrameDecoding(shape);
    }

    @Override
    public void accept(Bytes bytes, String channel, Consumer<Message> messages) {
      framer
          .accept(bytes)
          .forEach(frame -> messages.accept(new Message(frame, decoding.decode(frame))));
    }

    @Override
    public Bytes discardPending() {
      return framer.discardPending();
    }

    @Override
    public long overflowCount() {
      return 0;
    }
  }

  /** The registers one poll answered. */
  final class Answers implements MessageReader {
    private final String channel;
    private final RegisterDecoding decoding;

    Answers(Registers language) {
      this.channel = language.block().channel();
      this.decoding =
          new RegisterDecoding(
              language.value().format(),
              language.order(),
              language.value().exponent(),
              language.value().unit());
    }

    @Override
    public void accept(Bytes bytes, String from, Consumer<Message> messages) {
      if (from.equals(channel)) {
        messages.accept(new Message(bytes, decoding.decode(bytes)));
      }
    }

    @Override
    public Bytes discardPending() {
      return Bytes.empty();
    }

    @Override
    public long overflowCount() {
      return 0;
    }
  }
}
