package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Anchor;
import java.util.ArrayList;
import java.util.List;

/**
 * A name on a drawing, and where it may stand: the first of its places that is free is taken.
 *
 * @param bold whether what it names is being typed
 */
record DrawnName(String text, boolean bold, List<Place> places) {
  DrawnName {
    places = List.copyOf(places);
  }

  /** A place of words, with their middle at y. */
  record Place(double x, double y, Anchor anchor) {}

  /** Begins at a place and goes on in so many steps: a name far from its thing is misread. */
  static DrawnName stepping(
      String text, boolean bold, Place first, int steps, double stepAcross, double stepDown) {
    List<Place> places = new ArrayList<>();
    for (int step = 0; step <= steps; step++) {
      places.add(
          new Place(first.x() + step * stepAcross, first.y() + step * stepDown, first.anchor()));
    }
    return new DrawnName(text, bold, places);
  }

  /** The same name, which may also stand a little above and below its places, nearest first. */
  DrawnName orAside(double step, int steps) {
    List<Place> all = new ArrayList<>(places);
    for (int i = 1; i <= steps; i++) {
      for (double down : new double[] {i * step, -i * step}) {
        places.forEach(place -> all.add(new Place(place.x(), place.y() + down, place.anchor())));
      }
    }
    return new DrawnName(text, bold, all);
  }

  /** The same name, which may stand at the places of another where its own are taken. */
  DrawnName or(DrawnName other) {
    List<Place> both = new ArrayList<>(places);
    both.addAll(other.places);
    return new DrawnName(text, bold, both);
  }
}
