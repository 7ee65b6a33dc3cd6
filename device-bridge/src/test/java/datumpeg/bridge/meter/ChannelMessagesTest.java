package datumpeg.bridge.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.link.ble.BleLink;
import datumpeg.bridge.link.ble.GattNames;
import datumpeg.bridge.meter.MeterLanguage.DescribedValues;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterStream.Message;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChannelMessagesTest {
  private static final String DISTANCE = "0000d157-0000-4c41-9b0c-d47a9e600001";
  private static final String TILT = "00007117-0000-4c41-9b0c-d47a9e600001";

  private final ChannelMessages described =
      new ChannelMessages(new DescribedValues(1024, Unit.METRE));

  private static Bytes text(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.UTF_8));
  }

  private static List<Message> accept(ChannelMessages messages, Bytes bytes, String channel) {
    List<Message> complete = new ArrayList<>();
    messages.accept(bytes, channel, complete::add);
    return complete;
  }

  private static double value(List<Message> messages) {
    assertEquals(1, messages.size());
    return assertInstanceOf(Measured.class, messages.get(0).decoded()).siValue();
  }

  @Test
  void aCharacteristicIsReadAsItDescribesItself() {
    // sint32, exponent -4, metre; then uint16, exponent -2, degree: Bluetooth SIG, Assigned
    // Numbers.
    assertEquals(
        List.of(),
        accept(described, Bytes.ofHex("10fc0127010000"), DISTANCE + BleLink.DESCRIPTION));
    accept(described, Bytes.ofHex("06fe6327010000"), TILT + BleLink.DESCRIPTION);
    assertEquals(18.0044, value(accept(described, Bytes.ofHex("4cbf0200"), DISTANCE)), 1e-12);
    assertEquals(
        StrictMath.toRadians(0.35), value(accept(described, Bytes.ofHex("2300"), TILT)), 1e-12);
  }

  @Test
  void whatDoesNotDescribeItselfIsTextWhereverItIsCut() {
    String line = "Distance measured: 18.0035 m\r\n";
    for (int cut = 1; cut < line.length(); cut++) {
      List<Message> messages =
          new ArrayList<>(accept(described, text(line.substring(0, cut)), TILT));
      messages.addAll(accept(described, text(line.substring(cut)), TILT));
      assertEquals(18.0035, value(messages), 1e-12);
    }
  }

  @Test
  void unfinishedLinesOfTwoChannelsNeverMix() {
    ChannelMessages lines = new ChannelMessages(new TextLines(1024, Unit.METRE));
    assertEquals(List.of(), accept(lines, text("18.0"), DISTANCE));
    assertEquals(List.of(), accept(lines, text("9.0"), TILT));
    assertEquals(18.5, value(accept(lines, text("5\n").slice(0, 2), DISTANCE)) + 0.45, 1e-12);
    assertEquals(9.07, value(accept(lines, text("7\n"), TILT)), 1e-12);
    accept(lines, text("12.3"), DISTANCE);
    assertEquals(text("12.3"), lines.discardPending());
  }

  @Test
  void aBatteryIsAStatusAndNeverPartOfALine() {
    ChannelMessages lines = new ChannelMessages(new TextLines(1024, Unit.METRE));
    accept(lines, text("18.0"), DISTANCE);
    NotAReading level =
        assertInstanceOf(
            NotAReading.class,
            accept(lines, Bytes.ofHex("31"), GattNames.BATTERY_LEVEL).get(0).decoded());
    assertTrue(level.detail().contains("49 %"), level.detail());
    assertEquals(18.04, value(accept(lines, text("4\n"), DISTANCE)), 1e-12);
  }

  @Test
  void aDescriptionThatSaysNothingOfUseLeavesText() {
    for (String hex : List.of("00", "10fc0127", "1bfc0127010000", "10fcad27010000")) {
      accept(described, Bytes.ofHex(hex), DISTANCE + BleLink.DESCRIPTION);
      assertEquals(1.5, value(accept(described, text("1.5 m\n"), DISTANCE)), 1e-12);
    }
  }

  @Test
  void anyNumberOfChannelsCostsBoundedMemory() {
    for (int i = 0; i < 100_000; i++) {
      accept(described, text("1"), "channel-" + i);
    }
    assertTrue(described.discardPending().length() < 40_000);
  }
}
