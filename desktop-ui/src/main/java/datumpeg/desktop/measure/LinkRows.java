package datumpeg.desktop.measure;

import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.SteadyList;
import datumpeg.desktop.measure.MeasurePage.Listening;
import datumpeg.desktop.measure.SessionWish.LinkWish;
import datumpeg.desktop.measure.Sessions.Port;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The meters of a session: a link and a profile each. The keyboard needs no row. */
final class LinkRows extends VBox {
  private static final String USUAL_PROFILE = "general-text-line";
  private static final String SELF_DESCRIBING = "self-describing";

  private final Words words;
  private final ObservableList<String> ports = FXCollections.observableArrayList();
  private final ObservableList<String> profiles = FXCollections.observableArrayList(USUAL_PROFILE);
  private final VBox rows = new VBox();
  private final HeardMeters heard;
  private final List<Row> all = new ArrayList<>();

  /**
   * @param listen begins or stops listening for Bluetooth LE meters
   */
  LinkRows(Words words, List<LinkWish> remembered, Runnable listen) {
    this.words = words;
    getStyleClass().add("link-rows");
    rows.getStyleClass().add("link-rows");
    Button more = new Button(words.text("measure.add-link"));
    more.setId("measure-add-link");
    more.getStyleClass().add("large-button");
    more.setOnAction(event -> add(new LinkWish(firstPort(), USUAL_PROFILE)));
    heard = new HeardMeters(words, more, listen, this::use);
    getChildren().addAll(Labels.wrapping(words.text("measure.links-hint"), "hint"), rows, heard);
    remembered.forEach(this::add);
  }

  private String firstPort() {
    return ports.isEmpty() ? "serial:" : ports.get(0);
  }

  /** What is there to choose from; what was chosen stays. */
  void offer(List<Port> found, List<String> known) {
    SteadyList.bring(ports, found.stream().map(Port::address).toList());
    SteadyList.bring(profiles, known);
  }

  void show(Listening listening) {
    heard.show(listening, addresses());
  }

  /** A meter that was heard is one of the session's, if it is not yet. */
  private void use(Port meter) {
    if (!addresses().contains(meter.address())) {
      add(new LinkWish(meter.address(), SELF_DESCRIBING));
    }
  }

  /** The rows filled in. */
  List<LinkWish> wishes() {
    return all.stream()
        .map(Row::wish)
        .filter(wish -> !wish.address().isEmpty() && !wish.address().equals("serial:"))
        .toList();
  }

  private void add(LinkWish wish) {
    Row row = new Row(wish);
    all.add(row);
    rows.getChildren().add(row);
    heard.used(addresses());
  }

  private List<String> addresses() {
    return all.stream().map(row -> row.wish().address()).toList();
  }

  /** One meter. */
  private final class Row extends FlowPane {
    private final ComboBox<String> link = new ComboBox<>(ports);
    private final ComboBox<String> profile = new ComboBox<>(profiles);

    Row(LinkWish wish) {
      super(10, 6);
      int number = all.size() + 1;
      link.setEditable(true);
      link.setId("measure-link-" + number);
      link.setValue(wish.address());
      link.getEditor().setText(wish.address()); // read before it was ever shown
      link.getEditor().setPrefColumnCount(20);
      // What is typed and not yet confirmed is gone as soon as other meters are offered.
      link.getEditor().textProperty().addListener((text, was, now) -> link.setValue(now));
      link.setAccessibleText(words.text("measure.link", number));
      profile.setValue(wish.profile());
      profile.setAccessibleText(words.text("measure.profile", number));
      Button remove = new Button(words.text("measure.remove-link"));
      remove.getStyleClass().add("large-button");
      remove.setOnAction(event -> remove());
      getChildren().addAll(link, profile, remove);
    }

    private void remove() {
      all.remove(this);
      rows.getChildren().remove(this);
      heard.used(addresses());
    }

    LinkWish wish() {
      String profileId = profile.getValue();
      return new LinkWish(
          link.getEditor().getText().strip(), profileId == null ? USUAL_PROFILE : profileId);
    }
  }
}
