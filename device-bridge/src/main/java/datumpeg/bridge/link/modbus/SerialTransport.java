package datumpeg.bridge.link.modbus;

import com.digitalpetri.modbus.ModbusRtuFrame;
import com.digitalpetri.modbus.ModbusRtuResponseFrameParser;
import com.digitalpetri.modbus.client.ModbusRtuClientTransport;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkLostException;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Carries the library's frames over a link of ours: one opener of ports, one sign of their loss.
 */
final class SerialTransport implements ModbusRtuClientTransport {
  /** Set in the function code of an answer that refuses. */
  private static final int EXCEPTION = 0x80;

  private final ModbusRtuResponseFrameParser parser = new ModbusRtuResponseFrameParser();
  private volatile @Nullable Link link;
  private volatile int lastException;
  private volatile Consumer<ModbusRtuFrame> receiver = frame -> {};

  /** The link is open; whatever it receives is handed to {@link #received}. */
  void over(Link open) {
    link = open;
  }

  /** Bytes came; called on the link's thread. */
  void received(Bytes bytes) {
    ModbusRtuFrame complete;
    synchronized (parser) {
      ModbusRtuResponseFrameParser.ParserState state = parser.parse(bytes.toArray());
      if (state instanceof ModbusRtuResponseFrameParser.ParseError) {
        parser.reset();
        return;
      }
      if (!(state instanceof ModbusRtuResponseFrameParser.Accumulated accumulated)) {
        return;
      }
      complete = accumulated.frame();
      parser.reset();
    }
    byte[] content = content(complete.pdu());
    if (content.length == 2 && (content[0] & EXCEPTION) != 0) {
      lastException = content[1];
    }
    receiver.accept(complete);
  }

  /** The code of the last answer that refused: version 2.1.4 of the library does not tell it. */
  int lastException() {
    return lastException;
  }

  @Override
  public CompletionStage<Void> send(ModbusRtuFrame frame) {
    Link open = link;
    if (open == null) {
      return CompletableFuture.failedFuture(new IllegalStateException("the link is not open"));
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(frame.unitId());
    bytes.writeBytes(content(frame.pdu()));
    bytes.writeBytes(content(frame.crc()));
    try {
      open.send(Bytes.of(bytes.toByteArray()));
      return CompletableFuture.completedFuture(null);
    } catch (LinkLostException lost) {
      return CompletableFuture.failedFuture(lost);
    }
  }

  private static byte[] content(ByteBuffer buffer) {
    byte[] bytes = new byte[buffer.remaining()];
    buffer.duplicate().get(bytes);
    return bytes;
  }

  @Override
  public void resetFrameParser() {
    synchronized (parser) {
      parser.reset();
    }
  }

  @Override
  public void receive(Consumer<ModbusRtuFrame> frames) {
    receiver = frames;
  }

  @Override
  public boolean isConnected() {
    return link != null;
  }

  @Override
  public CompletionStage<Void> connect() {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public CompletionStage<Void> disconnect() {
    return CompletableFuture.completedFuture(null);
  }
}
