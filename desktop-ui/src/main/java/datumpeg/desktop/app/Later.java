package datumpeg.desktop.app;

import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Something that is made when it is first asked for: the window starts with one screen and must not
 * wait for what the others need.
 *
 * <p>One thread.
 */
final class Later<T> implements Supplier<T> {
  private final Supplier<? extends T> made;
  private Consumer<? super T> told = now -> {};
  private @Nullable T known;

  Later(Supplier<? extends T> made) {
    this.made = made;
  }

  @Override
  public T get() {
    T now = known;
    if (now == null) {
      now = made.get();
      known = now;
      told.accept(now);
    }
    return now;
  }

  /** Tells one listener when it is made; at once if it was. */
  void onMade(Consumer<? super T> listener) {
    told = listener;
    T now = known;
    if (now != null) {
      listener.accept(now);
    }
  }
}
