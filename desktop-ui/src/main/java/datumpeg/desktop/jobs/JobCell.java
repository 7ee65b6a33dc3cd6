package datumpeg.desktop.jobs;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.StandingMark;
import datumpeg.desktop.text.Words;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A job in the list: its name, its particulars and the strip of its stages. */
final class JobCell extends ListCell<JobCard> {
  private final JobsViewModel model;
  private final Words words;
  private @Nullable JobCard shown;

  JobCell(JobsViewModel model) {
    this.model = model;
    this.words = model.words();
    getStyleClass().add("job-cell");
    setPrefWidth(0); // as wide as the list, never wider
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
      setOnMouseClicked(null);
      setAccessibleText("");
      return;
    }
    setGraphic(content(card));
    setAccessibleText(spoken(card));
    setOnMouseClicked(
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            model.open(card);
          }
        });
  }

  private Node content(JobCard card) {
    Label title = Labels.wrapping(card.title(), "job-title");
    Label particulars = Labels.wrapping(card.particulars(), "job-particulars");
    VBox content = new VBox(title, particulars);
    content.getStyleClass().add("job-card");
    if (card.sentence().isEmpty()) {
      HBox strip = new HBox();
      strip.getStyleClass().add("stage-strip");
      card.stages().forEach(stage -> strip.getChildren().add(tile(card, stage)));
      content.getChildren().add(strip);
    } else {
      content.getChildren().add(Labels.wrapping(card.sentence(), "sentence"));
    }
    return content;
  }

  private Node tile(JobCard card, StageTile stage) {
    VBox tile = new VBox(Labels.wrapping(stage.title(), "tile-title"));
    tile.getStyleClass().addAll("stage-tile", stage.counts().isEmpty() ? "empty" : "measured");
    tile.setMaxWidth(Double.MAX_VALUE);
    tile.setPrefWidth(1);
    HBox.setHgrow(tile, Priority.ALWAYS);
    if (stage.counts().isEmpty()) {
      tile.getChildren().add(Labels.wrapping(words.text("jobs.tile-empty"), "tile-empty"));
    }
    for (StageTile.Count count : stage.counts()) {
      Label line =
          Labels.wrapping(count.number() + " " + words.standing(count.standing()), "tile-line");
      line.setGraphic(new StandingMark(count.standing()));
      tile.getChildren().add(line);
    }
    if (!stage.holdPointKey().isEmpty()) {
      tile.getChildren().add(Labels.wrapping(words.text(stage.holdPointKey()), "tile-hold"));
    }
    tile.addEventHandler(
        MouseEvent.MOUSE_CLICKED,
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 1) {
            model.open(card, stage);
          }
        });
    return tile;
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
