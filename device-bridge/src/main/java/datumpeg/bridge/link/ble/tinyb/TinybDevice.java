package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.ble.GattNames;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import tinyb.BluetoothAdapter;
import tinyb.BluetoothDevice;
import tinyb.BluetoothException;
import tinyb.BluetoothGattCharacteristic;
import tinyb.BluetoothGattDescriptor;
import tinyb.BluetoothGattService;
import tinyb.BluetoothManager;

/**
 * The child's connected meter. The library tells little by itself, so everything is looked at twice
 * a second, in lists that are fetched anew. One thread, and the library's own for values.
 */
final class TinybDevice {
  private static final int MOST_CHARACTERISTICS = 128;
  private static final long LOOK_MILLIS = 500;
  private static final long SHORT_LOOK_MILLIS = 20;

  private final BluetoothManager manager;
  private final BluetoothAdapter adapter;
  private final BluetoothDevice device;
  private final String address;
  private final boolean connectedByUs;
  private final ChildOutput output;
  private final List<BluetoothGattCharacteristic> characteristics = new ArrayList<>();
  private final BlockingQueue<String> commands = new LinkedBlockingQueue<>(1000);
  private int wholeCount;

  TinybDevice(
      BluetoothManager manager,
      BluetoothAdapter adapter,
      BluetoothDevice device,
      boolean connectedByUs,
      ChildOutput output) {
    this.manager = manager;
    this.adapter = adapter;
    this.device = device;
    this.address = device.getAddress();
    this.connectedByUs = connectedByUs;
    this.output = output;
  }

  static void pause(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Waits until the services are known and says what there is; false if that does not come. */
  boolean describe(long patienceMillis) {
    long start = System.nanoTime();
    int count = -1;
    // The list fills behind the property: it counts when it stays the same.
    while (!device.getServicesResolved() || count != countNow() || count < 1) {
      if (System.nanoTime() - start > patienceMillis * 1_000_000) {
        output.refused("NOT_CONNECTED", "its services did not become known in time");
        return false;
      }
      count = countNow();
      pause(SHORT_LOOK_MILLIS);
    }
    wholeCount = count;
    for (BluetoothGattService service : device.getServices()) {
      for (BluetoothGattCharacteristic one : service.getCharacteristics()) {
        if (characteristics.size() < MOST_CHARACTERISTICS) {
          describe(service, one);
        }
      }
    }
    output.say("ready");
    return true;
  }

  private int countNow() {
    return device.getServices().stream()
        .mapToInt(service -> 1 + service.getCharacteristics().size())
        .sum();
  }

  private void describe(BluetoothGattService service, BluetoothGattCharacteristic one) {
    characteristics.add(one);
    String flags = String.join(",", one.getFlags());
    output.say(
        "characteristic",
        String.valueOf(characteristics.size() - 1),
        service.getUUID().toLowerCase(Locale.ROOT),
        one.getUUID().toLowerCase(Locale.ROOT),
        flags.isEmpty() ? "-" : flags,
        ChildLine.hex(presentation(one)));
  }

  private static Bytes presentation(BluetoothGattCharacteristic one) {
    try {
      for (BluetoothGattDescriptor descriptor : one.getDescriptors()) {
        if (descriptor.getUUID().equalsIgnoreCase(GattNames.PRESENTATION_FORMAT)) {
          return Bytes.of(descriptor.readValue());
        }
      }
    } catch (BluetoothException unreadable) {
      // As good as none: a profile may still know the meter.
      return Bytes.empty();
    }
    return Bytes.empty();
  }

  /** Does what it is told until its input or the meter ends; returns the exit status. */
  int serve(InputStream in) {
    Thread reader = new Thread(() -> readCommands(in), "commands");
    reader.setDaemon(true);
    reader.start();
    while (true) {
      String line = nextCommand();
      if (line != null && line.equals("@close")) {
        leave();
        return 0;
      }
      if (line != null) {
        ChildLine.parse(line).ifPresent(this::obey);
      }
      Optional<String> trouble = trouble();
      if (trouble.isPresent()) {
        output.say("gone", ChildLine.hex(trouble.get()));
        return 0;
      }
      output.say("alive");
    }
  }

  private void readCommands(InputStream in) {
    LineReader lines = new LineReader(in);
    try {
      for (String line = lines.next(); line != null; line = lines.next()) {
        commands.put(line);
      }
      commands.put("@close");
    } catch (IOException e) {
      commands.offer("@close");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private @Nullable String nextCommand() {
    try {
      return commands.poll(LOOK_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return "@close";
    }
  }

  /** Why the connection is gone; empty while all is as it was. */
  private Optional<String> trouble() {
    if (manager.getAdapters().isEmpty()) {
      return Optional.of(
          "the Bluetooth service of this machine ended, or its adapter was unplugged");
    }
    if (!adapter.getPowered()) {
      return Optional.of("the Bluetooth adapter was switched off");
    }
    Optional<BluetoothDevice> now =
        adapter.getDevices().stream().filter(one -> one.getAddress().equals(address)).findFirst();
    if (now.isEmpty()) {
      return Optional.of("it vanished");
    }
    if (!now.get().getConnected()) {
      return Optional.of("switched off, out of reach, or disconnected");
    }
    if (!now.get().getServicesResolved() || countNow() < wholeCount) {
      return Optional.of("its service went away");
    }
    return Optional.empty();
  }

  private void obey(ChildLine line) {
    String call = line.part(0);
    int index = line.number(1);
    if (index < 0 || index >= characteristics.size()) {
      output.say("refuses", call);
      return;
    }
    BluetoothGattCharacteristic one = characteristics.get(index);
    try {
      switch (line.word()) {
        case "subscribe" -> {
          one.enableValueNotifications(
              value -> output.say("value", line.part(1), ChildLine.hex(Bytes.of(value))));
          output.say("answer", call, "-");
        }
        case "read" -> output.say("answer", call, ChildLine.hex(Bytes.of(one.readValue())));
        case "write" -> {
          boolean taken = one.writeValue(line.bytes(2).toArray());
          output.say(taken ? "answer" : "refuses", call, "-");
        }
        default -> output.say("refuses", call);
      }
    } catch (BluetoothException refused) {
      output.say("refuses", call);
    }
  }

  private void leave() {
    try {
      if (connectedByUs) {
        device.disconnect();
      }
    } catch (BluetoothException alreadyGone) {
      output.say("alive");
    }
  }
}
