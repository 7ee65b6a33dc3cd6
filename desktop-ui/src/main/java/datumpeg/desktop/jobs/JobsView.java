package datumpeg.desktop.jobs;

import datumpeg.desktop.control.FileDrop;
import datumpeg.desktop.control.InkWell;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.SteadyList;
import javafx.animation.PauseTransition;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** The list of jobs. */
public final class JobsView extends VBox {
  private static final double MILLISECONDS_TO_THE_FILTERS = 150;

  private final JobsViewModel model;
  private final Label heading = new Label();
  private final Label sentence = Labels.vanishing("sentence");
  private final ListView<JobCard> list = new ListView<>();
  private final InkWell inks = new InkWell(this::setAgain);
  private @Nullable CardSetter setter;
  private final VBox filterPlace = new VBox();
  private @Nullable FilterBar filters;
  private String chosen = "";

  public JobsView(JobsViewModel model, JobActions actions) {
    this.model = model;
    getStyleClass().addAll("screen", "jobs-screen");
    heading.getStyleClass().add("heading");
    list.setId("jobs");
    list.setAccessibleText(model.words().text("jobs.heading"));
    list.setCellFactory(view -> new JobCell(model, this::setter));
    list.managedProperty().bind(sentence.managedProperty().not());
    list.visibleProperty().bind(list.managedProperty());
    list.addEventFilter(KeyEvent.KEY_PRESSED, this::openOnEnter);
    VBox.setVgrow(list, Priority.ALWAYS);
    Label hint = Labels.wrapping(model.words().text("jobs.hint"), "hint");
    hint.managedProperty().bind(list.managedProperty());
    hint.visibleProperty().bind(list.managedProperty());
    JobButtons buttons =
        new JobButtons(model.words(), actions, list.getSelectionModel().selectedItemProperty());
    FileDrop.on(this, actions.takeFile());
    getChildren().addAll(inks, heading, buttons, filterPlace, sentence, list, hint);
    filterPlace.setStyle("-fx-min-height: 3.6em;");
    addEventHandler(KeyEvent.KEY_PRESSED, this::clearOnEscape);
    bringFiltersSoon();
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener((property, before, card) -> chosen = card == null ? chosen : card.id());
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  /** Lists and calendars are slow to make: the jobs are shown first. */
  private void bringFiltersSoon() {
    PauseTransition soon = new PauseTransition(Duration.millis(MILLISECONDS_TO_THE_FILTERS));
    soon.setOnFinished(
        event -> {
          FilterBar bar = new FilterBar(model);
          bar.show(model.page().get());
          filterPlace.getChildren().add(bar);
          filterPlace.setStyle("");
          filterPlace.setMinHeight(USE_PREF_SIZE);
          filters = bar;
        });
    soon.play();
  }

  private CardSetter setter() {
    CardSetter known = setter;
    if (known == null) {
      known = new CardSetter(model.words(), inks.palette());
      setter = known;
    }
    return known;
  }

  /** Theme or letters have changed: no card is as it was. */
  private void setAgain() {
    if (setter != null) {
      setter = null;
      list.refresh();
    }
  }

  /** The list takes the keys. */
  @Override
  public void requestFocus() {
    list.requestFocus();
  }

  private void show(JobsPage page) {
    FilterBar bar = filters;
    if (bar != null) {
      bar.show(page);
    }
    heading.setText(page.heading());
    sentence.setText(page.sentence());
    boolean first = list.getItems().isEmpty() && !page.cards().isEmpty();
    String keep = chosen;
    SteadyList.bring(list.getItems(), page.cards());
    for (int i = 0; i < page.cards().size(); i++) {
      if (page.cards().get(i).id().equals(keep) || (keep.isEmpty() && i == 0)) {
        list.getSelectionModel().clearAndSelect(i);
      }
    }
    if (first) {
      list.requestFocus();
    }
  }

  private void clearOnEscape(KeyEvent event) {
    if (event.getCode() == KeyCode.ESCAPE && !model.filter().isAll()) {
      model.filter(JobFilter.ALL);
      event.consume();
    }
  }

  private void openOnEnter(KeyEvent event) {
    JobCard card = list.getSelectionModel().getSelectedItem();
    if (card != null && event.getCode() == KeyCode.ENTER) {
      model.open(card);
      event.consume();
    }
  }
}
