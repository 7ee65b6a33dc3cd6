package datumpeg.desktop.jobs;

import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ListCell;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.jspecify.annotations.Nullable;

/** A job in the list: its name, its particulars and the strip of its stages. */
final class JobCell extends ListCell<JobCard> {
  private final JobsViewModel model;
  private final Words words;
  private final CardFace face;
  private @Nullable JobCard shown;

  /**
   * An empty cell.
   *
   * @param setters the setter for the present size of letters
   */
  JobCell(JobsViewModel model, Supplier<CardSetter> setters) {
    this.model = model;
    this.words = model.words();
    this.face = new CardFace(setters);
    getStyleClass().add("job-cell");
    setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
    setPrefWidth(0); // as wide as the list, never wider
    face.setOnMouseClicked(this::clicked);
  }

  @Override
  protected void updateItem(@Nullable JobCard card, boolean empty) {
    super.updateItem(card, empty);
    if (!empty && card != null && card.equals(shown)) {
      return; // a list asks again and again for what stands there already
    }
    shown = empty ? null : card;
    if (empty || card == null) {
      setGraphic(null);
      setAccessibleText("");
      return;
    }
    face.show(card);
    setGraphic(face);
    setAccessibleText(spoken(card));
  }

  /** One click on a stage opens it, two beside the stages open the job. */
  private void clicked(MouseEvent event) {
    JobCard card = shown;
    if (card == null || event.getButton() != MouseButton.PRIMARY) {
      return;
    }
    Optional<StageTile> stage = face.stageAt(event.getX(), event.getY());
    if (stage.isPresent() && event.getClickCount() == 1) {
      model.open(card, stage.get());
    } else if (stage.isEmpty() && event.getClickCount() == 2) {
      model.open(card);
    }
  }

  private String spoken(JobCard card) {
    StringBuilder text = new StringBuilder(card.title()).append(". ").append(card.particulars());
    text.append(". ").append(card.sentence());
    for (StageTile stage : card.stages()) {
      text.append(' ').append(stage.title()).append(": ").append(spoken(stage.counts()));
      if (!stage.holdPointKey().isEmpty()) {
        text.append(' ').append(words.text(stage.holdPointKey())).append('.');
      }
    }
    return text.toString();
  }

  private String spoken(List<StageTile.Count> counts) {
    if (counts.isEmpty()) {
      return words.text("jobs.tile-empty") + ".";
    }
    return String.join(
            ", ",
            counts.stream()
                .map(count -> count.number() + " " + words.standing(count.standing()))
                .toList())
        + ".";
  }
}
