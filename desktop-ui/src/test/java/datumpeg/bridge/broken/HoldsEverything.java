package datumpeg.bridge.broken;

import com.digitalpetri.modbus.client.ModbusRtuClient;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.uuid.UUIDGenerator;
import com.fazecast.jSerialComm.SerialPort;
import datumpeg.desktop.broken.BrokenViewModel;
import de.siegmar.fastcsv.reader.CsvReader;
import java.sql.Connection;
import javafx.scene.Node;
import org.bluez.Device1;
import org.ejml.data.DMatrixRMaj;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.sqlite.SQLiteConfig;
import org.tomlj.TomlTable;
import picocli.CommandLine;
import tinyb.BluetoothDevice;

/** Breaks the walls around the libraries, and some more. */
public final class HoldsEverything {
  static final int[] STATIC_AND_OPEN = {1};

  public record Libraries(
      JsonFactory json,
      UUIDGenerator ids,
      SerialPort port,
      ModbusRtuClient registers,
      DBusConnection bus,
      Device1 meter,
      BluetoothDevice nativeMeter,
      CsvReader<?> csv,
      Connection connection,
      DMatrixRMaj matrix,
      SQLiteConfig sqlite,
      TomlTable toml,
      CommandLine line,
      BrokenViewModel window,
      Node node) {}

  private HoldsEverything() {}

  @SuppressWarnings("SystemOut")
  public static void leave() {
    System.out.println("Leaving.");
    System.exit(STATIC_AND_OPEN[0]);
  }
}
