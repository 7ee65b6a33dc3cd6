package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.ble.BleCharacteristic;
import datumpeg.bridge.link.ble.BleConnection;
import datumpeg.bridge.link.ble.BleEvents;
import datumpeg.bridge.link.ble.BleRefusal;
import datumpeg.bridge.link.ble.Patience;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;

/** A connection held by a child. Thread-safe. */
final class TinybConnection implements BleConnection {
  /** The child says twice a second that it is well, unless it waits for the service. */
  private static final Duration HUNG = Duration.ofSeconds(30);

  private final String device;
  private final ChildProcess child;
  private final List<BleCharacteristic> characteristics;
  private final BleEvents events;
  private final Patience patience;
  private final Map<String, CompletableFuture<Answer>> questions = new ConcurrentHashMap<>();
  private final AtomicInteger questionCount = new AtomicInteger();
  private final Thread listening;

  private TinybConnection(
      String device,
      ChildProcess child,
      List<BleCharacteristic> characteristics,
      BleEvents events,
      Patience patience) {
    this.device = device;
    this.child = child;
    this.characteristics = List.copyOf(characteristics);
    this.events = events;
    this.patience = patience;
    this.listening = new Thread(this::listen, "tinyb " + device);
    listening.setDaemon(true);
  }

  static TinybConnection of(
      String device,
      ChildProcess child,
      TinybGreeting greeting,
      BleEvents events,
      Patience patience) {
    TinybConnection connection =
        new TinybConnection(device, child, greeting.characteristics(), events, patience);
    connection.listening.start();
    return connection;
  }

  private void listen() {
    try {
      boolean going = true;
      while (going) {
        Optional<ChildLine> line = child.next(HUNG);
        going = line.isPresent() && take(line.get());
        if (line.isEmpty()) {
          events.gone("the process of the native library hangs");
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      questions.values().forEach(question -> question.complete(Answer.none()));
    }
  }

  /** Returns false at the end. */
  private boolean take(ChildLine line) {
    switch (line.word()) {
      case "value" -> events.notified(line.part(0), line.bytes(1));
      case "answer" -> answer(line.part(0), Answer.of(line.bytes(1)));
      case "refuses" -> answer(line.part(0), Answer.refused());
      case "gone" -> {
        events.gone(line.words(0));
        return false;
      }
      case "end" -> {
        events.gone("the process of the native library ended with status " + line.part(0));
        return false;
      }
      default -> {}
    }
    return true;
  }

  private void answer(String question, Answer answer) {
    CompletableFuture<Answer> asked = questions.remove(question);
    if (asked != null) {
      asked.complete(answer);
    }
  }

  private Answer ask(String word, BleCharacteristic characteristic, String... more) {
    String number = String.valueOf(questionCount.incrementAndGet());
    CompletableFuture<Answer> answer = new CompletableFuture<>();
    questions.put(number, answer);
    String[] parts = new String[2 + more.length];
    parts[0] = number;
    parts[1] = characteristic.handle();
    System.arraycopy(more, 0, parts, 2, more.length);
    if (!child.tell(ChildLine.of(word, parts)) || !listening.isAlive()) {
      answer.complete(Answer.none());
    }
    try {
      return answer.get(patience.answer().toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Answer.none();
    } catch (ExecutionException | TimeoutException silent) {
      return Answer.none();
    } finally {
      questions.remove(number);
    }
  }

  @Override
  public List<BleCharacteristic> characteristics() {
    return characteristics;
  }

  @Override
  public void subscribe(BleCharacteristic characteristic) {
    Answer answer = ask("subscribe", characteristic);
    if (answer.kind() != Answer.Kind.VALUE) {
      throw BleRefusal.notConnected(device, "it does not report its values", null);
    }
  }

  @Override
  public Answer read(BleCharacteristic characteristic) {
    return ask("read", characteristic);
  }

  @Override
  public boolean write(BleCharacteristic characteristic, Bytes value) {
    return ask("write", characteristic, ChildLine.hex(value)).kind() == Answer.Kind.VALUE;
  }

  @Override
  public Optional<String> trouble() {
    // Its thread reads to the end what the child said, and tells the end itself.
    return listening.isAlive()
        ? Optional.empty()
        : Optional.of("the process of the native library ended");
  }

  @Override
  public void close() {
    child.end(patience.answer());
  }
}
