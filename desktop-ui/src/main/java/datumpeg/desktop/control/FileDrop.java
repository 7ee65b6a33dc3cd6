package datumpeg.desktop.control;

import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.input.Dragboard;
import javafx.scene.input.TransferMode;

/** A place onto which one file can be dropped. */
public final class FileDrop {
  private FileDrop() {}

  /** Makes a node such a place; of several files none is taken. */
  public static void on(Node place, Consumer<Path> dropped) {
    place.setOnDragOver(
        event -> {
          if (hasOneFile(event.getDragboard())) {
            event.acceptTransferModes(TransferMode.COPY);
          }
          event.consume();
        });
    place.setOnDragDropped(
        event -> {
          boolean one = hasOneFile(event.getDragboard());
          if (one) {
            dropped.accept(event.getDragboard().getFiles().get(0).toPath());
          }
          event.setDropCompleted(one);
          event.consume();
        });
  }

  private static boolean hasOneFile(Dragboard board) {
    return board.hasFiles() && board.getFiles().size() == 1;
  }
}
