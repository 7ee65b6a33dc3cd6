package datumpeg.desktop.form;

import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

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
    return String.join(" ", parts);
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
