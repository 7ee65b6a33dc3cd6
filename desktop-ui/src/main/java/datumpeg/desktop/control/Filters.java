package datumpeg.desktop.control;

import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.beans.InvalidationListener;
import javafx.geometry.Bounds;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * What a screen is asked: lists to choose from and a period. Where they would leave too little room
 * for the answer, one button says what is asked and opens them.
 *
 * @param <M> what can be chosen
 */
public final class Filters<M extends Enum<M>> extends VBox {
  /** How much of the screen's height the open lists may take (our choice). */
  private static final double MOST_OF_THE_SCREEN = 0.3;

  private final Words words;
  private final List<M> alwaysTold;
  private final Map<M, Chooser> choosers = new LinkedHashMap<>();
  private final DayField from;
  private final DayField to;
  private final FlowPane lists = new FlowPane();
  private final Button fold = new Button();
  private String asked = "";
  private boolean tight;
  private boolean pressed;
  private boolean open = true;

  /** Is told what the user chooses. */
  public interface Chosen<M> extends BiConsumer<M, String> {
    /** Another period, open where empty. */
    void between(Optional<LocalDate> from, Optional<LocalDate> to);
  }

  /**
   * Empty lists.
   *
   * @param id what the ids of the lists begin with, for tests and style sheets
   * @param alwaysTold what is told of folded lists even if it is the usual
   */
  public Filters(String id, Words words, List<M> matters, List<M> alwaysTold, Chosen<M> chosen) {
    this.words = words;
    this.alwaysTold = List.copyOf(alwaysTold);
    getStyleClass().add("filter-fold");
    lists.getStyleClass().add("filters");
    for (M matter : matters) {
      String name = matter.name().toLowerCase(Locale.ROOT);
      choosers.put(
          matter,
          new Chooser(
              id + "-" + name,
              words.text("trend-matter." + name),
              choice -> chosen.accept(matter, choice)));
    }
    Runnable period = () -> period(chosen);
    from = new DayField(id + "-from", words.text("trend.from"), this::notADay, period);
    to = new DayField(id + "-to", words.text("trend.to"), this::notADay, period);
    lists.getChildren().addAll(choosers.values());
    lists.getChildren().addAll(from, to);
    fold.setId(id + "-fold");
    fold.setWrapText(true);
    fold.setMinHeight(USE_PREF_SIZE);
    fold.setOnAction(event -> press());
    getChildren().addAll(fold, lists);
    tell();
  }

  private String notADay(String typed) {
    return words.text("day.wrong", typed);
  }

  private void period(Chosen<M> chosen) {
    chosen.between(from.day(), to.day());
  }

  /**
   * Folds the lists where they would take too much of what scrolls them, until the user folds or
   * opens them.
   */
  public void within(ScrollPane scroll) {
    InvalidationListener fit = changed -> fit(scroll.getViewportBounds());
    scroll.viewportBoundsProperty().addListener(fit);
    fold.heightProperty().addListener(fit); // letters of another size
    lists.heightProperty().addListener(fit);
  }

  private void fit(Bounds seen) {
    if (seen.getWidth() > 0 && seen.getHeight() > 0) {
      tight = lists.prefHeight(seen.getWidth()) > MOST_OF_THE_SCREEN * seen.getHeight();
      open(pressed ? open : !tight);
    }
  }

  private void press() {
    pressed = true;
    open(!open);
  }

  private void open(boolean wanted) {
    boolean focused = lists.isFocusWithin() || fold.isFocused();
    boolean other = open != wanted;
    open = wanted;
    tell();
    if (other && focused) {
      requestFocus(); // what is folded away must not hand the keys to anything further on
    }
  }

  /** What is asked, in words, such as {@code Check: Column plumb; Crew: Blue}. */
  public String asked() {
    return asked;
  }

  private void tell() {
    lists.setVisible(open);
    lists.setManaged(open);
    fold.setVisible(tight || !open);
    fold.setManaged(tight || !open);
    fold.setText(open ? words.text("filters.hide") : words.text("filters.show", asked));
  }

  /** Brings all lists to what the model says; nobody is told. */
  public void show(
      Map<M, List<Choice>> choices,
      Map<M, String> chosen,
      Optional<LocalDate> fromDay,
      Optional<LocalDate> toDay) {
    List<String> told = new ArrayList<>();
    choosers.forEach(
        (matter, chooser) -> {
          String id = chosen.getOrDefault(matter, "");
          List<Choice> all = withChosen(choices.getOrDefault(matter, List.of()), id);
          chooser.show(all, id);
          all.stream()
              .filter(choice -> choice.id().equals(id))
              .filter(choice -> alwaysTold.contains(matter) || !choice.equals(all.get(0)))
              .findFirst()
              .ifPresent(choice -> told.add(chooser.name() + ": " + choice.name()));
        });
    from.show(fromDay);
    to.show(toDay);
    fromDay.ifPresent(day -> told.add(words.text("trend.from") + ": " + day));
    toDay.ifPresent(day -> told.add(words.text("trend.to") + ": " + day));
    asked = String.join("; ", told);
    tell();
  }

  /** A name that no job has any more stays to be seen while it is chosen. */
  private static List<Choice> withChosen(List<Choice> choices, String id) {
    if (choices.isEmpty() || choices.stream().anyMatch(choice -> choice.id().equals(id))) {
      return choices;
    }
    List<Choice> more = new ArrayList<>(choices);
    more.add(new Choice(id, id));
    return more;
  }

  /** The first list takes the keys; what opens it, while it is folded away. */
  @Override
  public void requestFocus() {
    if (open) {
      lists.getChildren().get(0).requestFocus();
    } else {
      fold.requestFocus();
    }
  }
}
