package datumpeg.desktop.control;

/**
 * Holds the inks of the theme for many small drawings, so that the style sheet is asked once and
 * not by each of them. Shows nothing and takes no place.
 */
public final class InkWell extends Inked {
  private final Runnable told;

  /**
   * @param told of each change of an ink or of the letters
   */
  public InkWell(Runnable told) {
    this.told = told;
    getStyleClass().add("ink-well");
    setManaged(false);
    setMouseTransparent(true);
  }

  @Override
  void inksChanged() {
    told.run();
  }
}
