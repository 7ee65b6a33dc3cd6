package datumpeg.desktop.trend;

import datumpeg.desktop.text.Words;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What went how: one target of the chosen job, or one check over all jobs. */
public final class TrendView extends VBox {
  private final JobTrendView ofJob;
  private final JobsTrendView overJobs;
  private final JobsTrendViewModel jobs;
  private Node shown;

  public TrendView(TrendViewModel job, JobsTrendViewModel jobs) {
    getStyleClass().addAll("screen", "trend-screen");
    this.jobs = jobs;
    ofJob = new JobTrendView(job);
    overJobs = new JobsTrendView(jobs);
    shown = jobs.isWanted() ? overJobs : ofJob;
    Words words = job.words();
    ToggleGroup group = new ToggleGroup();
    HBox choice =
        new HBox(
            button(words.text("trend.this-job"), "trend-this-job", ofJob, group),
            button(words.text("trend.over-jobs"), "trend-over-jobs", overJobs, group));
    choice.getStyleClass().add("screen-choice");
    choice.setMinHeight(USE_PREF_SIZE);
    getChildren().addAll(choice, shown);
    VBox.setVgrow(ofJob, Priority.ALWAYS);
    VBox.setVgrow(overJobs, Priority.ALWAYS);
  }

  private ToggleButton button(String name, String id, Node node, ToggleGroup group) {
    ToggleButton button = new ToggleButton(name);
    button.setId(id);
    button.setToggleGroup(group);
    button.setSelected(node == shown);
    button.setOnAction(
        event -> {
          button.setSelected(true);
          shown = node;
          jobs.want(node == overJobs);
          getChildren().set(1, node);
        });
    return button;
  }

  /** What is shown takes the keys. */
  @Override
  public void requestFocus() {
    shown.requestFocus();
  }
}
