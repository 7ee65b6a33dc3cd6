package datumpeg.desktop.findings;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.findings.FindingsPage.Behind;
import datumpeg.desktop.findings.FindingsPage.BehindRow;
import datumpeg.desktop.text.Words;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;

/** The readings behind a number, down to the bytes they came in. */
final class BehindPane extends VBox {
  private final Words words;
  private final Label title = Labels.wrapping("", "subheading");
  private final Label sentence = Labels.vanishing("sentence");
  private final VBox rows = new VBox();
  private final Button back;

  BehindPane(Words words, Runnable close) {
    this.words = words;
    getStyleClass().add("behind");
    rows.getStyleClass().add("behind-rows");
    back = new Button(words.text("behind.back"));
    back.setId("behind-back");
    back.setCancelButton(true);
    back.setOnAction(event -> close.run());
    ScrollPane scroll = new ScrollPane(rows);
    scroll.setFitToWidth(true);
    scroll.getStyleClass().add("causes-scroll");
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setAccessibleText(words.text("behind.heading"));
    VBox.setVgrow(scroll, javafx.scene.layout.Priority.ALWAYS);
    getChildren().addAll(back, title, sentence, scroll);
  }

  void show(Behind behind) {
    title.setText(behind.title());
    sentence.setText(behind.sentence());
    rows.getChildren().setAll(behind.rows().stream().map(this::row).toList());
    back.requestFocus();
  }

  private VBox row(BehindRow row) {
    VBox box =
        new VBox(
            Labels.wrapping(row.row().value() + "   " + row.row().target(), "behind-value"),
            Labels.wrapping(row.row().how(), "behind-how"));
    box.getStyleClass().add("behind-row");
    if (row.suspected()) {
      box.getChildren().add(Labels.wrapping(words.text("behind.suspected"), "behind-slip"));
    }
    if (!row.adjusted().isEmpty()) {
      box.getChildren().add(Labels.wrapping(row.adjusted(), "behind-how"));
    }
    box.getChildren()
        .add(
            Labels.wrapping(
                row.row().bytes().isEmpty() ? words.text("behind.typed") : row.row().bytes(),
                "behind-bytes"));
    box.getChildren()
        .add(
            Labels.wrapping(
                words.text("behind.source", row.row().source(), row.row().id()), "hint"));
    return box;
  }
}
