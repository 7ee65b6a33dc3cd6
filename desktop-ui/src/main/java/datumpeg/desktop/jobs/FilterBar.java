package datumpeg.desktop.jobs;

import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.Chooser;
import datumpeg.desktop.control.DayField;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.control.Button;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** What narrows the list of jobs, each part visible, all of them cleared by one button or key. */
final class FilterBar extends FlowPane {
  private final Words words;
  private final JobsViewModel model;
  private final TextField text = new TextField();
  private final Chooser crew;
  private final Chooser site;
  private final Chooser slab;
  private final DayField from;
  private final DayField to;
  private final Button clear = new Button();
  private boolean showing;

  FilterBar(JobsViewModel model) {
    this.model = model;
    this.words = model.words();
    getStyleClass().add("filters");
    crew = chooser("crew", id -> model.filter(model.filter().withCrew(id)));
    site = chooser("site", id -> model.filter(model.filter().withSite(id)));
    slab = chooser("slab", id -> model.filter(model.filter().withSlabBy(id)));
    text.setPrefColumnCount(14);
    text.textProperty()
        .addListener((property, before, now) -> told(() -> model.filter().withText(now)));
    from =
        new DayField("jobs-work-from", words.text("jobs.filter-from"), this::notADay, this::period);
    to = new DayField("jobs-work-to", words.text("jobs.filter-to"), this::notADay, this::period);
    clear.setId("jobs-filter-clear");
    clear.setText(words.text("jobs.filter-clear"));
    clear.setMinWidth(USE_PREF_SIZE);
    clear.setOnAction(event -> model.filter(JobFilter.ALL));
    getChildren()
        .addAll(
            named(text, "jobs.filter", "jobs-filter"),
            crew,
            site,
            slab,
            from,
            to,
            named(clear, "", "jobs-filter-clear"));
  }

  private Chooser chooser(String matter, Consumer<String> chosen) {
    return new Chooser("jobs-" + matter, words.text("trend-matter." + matter), chosen);
  }

  private String notADay(String typed) {
    return words.text("day.wrong", typed);
  }

  private void period() {
    model.filter(model.filter().between(from.day(), to.day()));
  }

  private VBox named(Control control, String key, String id) {
    control.setId(id);
    Label name = new Label(key.isEmpty() ? " " : words.text(key));
    name.getStyleClass().add("chooser-name");
    if (!key.isEmpty()) {
      control.setAccessibleText(words.text(key));
      name.setLabelFor(control);
    }
    VBox box = new VBox(name, control);
    box.getStyleClass().add("chooser");
    return box;
  }

  private void told(Supplier<JobFilter> filter) {
    if (!showing) {
      model.filter(filter.get());
    }
  }

  /** Brings all parts to what the model says. */
  void show(JobsPage page) {
    showing = true;
    JobFilter now = model.filter();
    crew.show(choices(page.crews(), now.crew()), now.crew());
    site.show(choices(page.sites(), now.site()), now.site());
    slab.show(choices(page.slabLayers(), now.slabBy()), now.slabBy());
    if (!text.getText().equals(now.text())) {
      text.setText(now.text());
    }
    from.show(now.from());
    to.show(now.to());
    clear.setDisable(now.isAll());
    showing = false;
  }

  /** A name that no job has any more stays to be seen while it is chosen. */
  private List<Choice> choices(List<String> names, String chosen) {
    List<Choice> choices = new ArrayList<>(List.of(new Choice("", words.text("trend.all"))));
    names.forEach(name -> choices.add(new Choice(name, name)));
    if (!chosen.isEmpty() && !names.contains(chosen)) {
      choices.add(new Choice(chosen, chosen));
    }
    return choices;
  }
}
