package datumpeg.desktop.form;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The drawings of what is typed, in words. Immutable. */
final class ShapeWords {
  private final Words words;
  private final BuildingShape shape;

  ShapeWords(Words words, BuildingShape shape) {
    this.words = words;
    this.shape = shape;
  }

  /** The plan, or what is needed for one. */
  String plan() {
    if (shape.spanMetres().isEmpty() && shape.lengthMetres().isEmpty()) {
      return words.text("form.draw.no-plan");
    }
    List<String> parts = new ArrayList<>(List.of(words.text("form.draw.plan") + "."));
    shape.spanMetres().ifPresent(span -> parts.add(words.text("form.spoken.span", told(span))));
    shape
        .lengthMetres()
        .ifPresent(length -> parts.add(words.text("form.spoken.length", told(length))));
    if (!shape.baysMetres().isEmpty()) {
      String bays = shape.baysMetres().stream().map(this::told).collect(Collectors.joining(", "));
      parts.add(words.text("form.spoken.bays", shape.baysMetres().size() + 1, bays));
    }
    shape
        .holes()
        .forEach(
            hole ->
                parts.add(
                    words.text(
                        "form.spoken.opening",
                        hole.id(),
                        hole.wall().text(),
                        told(hole.fromMetres()),
                        told(hole.widthMetres()))));
    parts.addAll(details(shape.details()));
    return String.join(" ", parts);
  }

  private List<String> details(PlanDetails details) {
    List<String> parts = new ArrayList<>();
    if (!details.corners().isEmpty()) {
      parts.add(
          words.text(
              "form.spoken.corners",
              joined(
                  details.corners().stream()
                      .map(corner -> corner.name() + " " + place(corner.place())))));
    }
    for (PlanDetails.Post post : details.posts()) {
      String end = words.text(post.atFirstEnd() ? "form.draw.first-end" : "form.draw.last-end");
      parts.add(words.text("form.spoken.post", post.name(), end, told(post.fromSideAMetres())));
    }
    for (PlanDetails.Outlet outlet : details.outlets()) {
      String side = words.text(outlet.onSideA() ? "form.draw.side-a" : "form.draw.side-b");
      parts.add(words.text("form.spoken.outlet", side, told(outlet.fromFirstEndMetres())));
    }
    for (PlanDetails.Run run : details.runs()) {
      parts.add(words.text("form.spoken.run", run.name(), place(run.from()), place(run.to())));
    }
    details
        .leastEdgeMetres()
        .ifPresent(edge -> parts.add(words.text("form.spoken.anchors", told(edge))));
    return parts;
  }

  private static String joined(Stream<String> items) {
    return items.collect(Collectors.joining("; "));
  }

  private String place(PlanPoint point) {
    return told(point.xMetres()) + ", " + told(point.yMetres());
  }

  /** The portal frame, or what is needed for one. */
  String portal() {
    if (shape.spanMetres().isEmpty() && shape.eaveHeightMetres().isEmpty()) {
      return words.text("form.draw.no-portal");
    }
    List<String> parts = new ArrayList<>(List.of(words.text("form.draw.portal") + "."));
    shape
        .eaveHeightMetres()
        .ifPresent(eave -> parts.add(words.text("form.spoken.eave", told(eave))));
    shape
        .ridgeHeightMetres()
        .ifPresent(ridge -> parts.add(words.text("form.spoken.ridge", told(ridge))));
    if (!shape.gable()) {
      parts.add(words.text("form.spoken.mono"));
    }
    return String.join(" ", parts);
  }

  private String told(double metres) {
    return words.figures().lengths().display().dimension(metres);
  }
}
