package datumpeg.desktop.control;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.css.CssMetaData;
import javafx.css.SimpleStyleableBooleanProperty;
import javafx.css.SimpleStyleableDoubleProperty;
import javafx.css.SimpleStyleableObjectProperty;
import javafx.css.Styleable;
import javafx.css.StyleableProperty;
import javafx.css.StyleablePropertyFactory;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;

/** A node to which the style sheet gives the inks of the theme and the size of letters. */
public abstract class Inked extends Region {
  private static final StyleablePropertyFactory<Inked> FACTORY =
      new StyleablePropertyFactory<>(Region.getClassCssMetaData());
  private static final Map<Ink, CssMetaData<Inked, Color>> INKS = new EnumMap<>(Ink.class);
  private static final CssMetaData<Inked, Number> LETTERS =
      FACTORY.createSizeCssMetaData("-letters", node -> node.letters, Palette.USUAL_LETTERS_PIXELS);
  private static final CssMetaData<Inked, Boolean> HEAVY =
      FACTORY.createBooleanCssMetaData("-heavy-letters", node -> node.heavy, false);

  static {
    for (Ink ink : Ink.values()) {
      INKS.put(
          ink,
          FACTORY.createColorCssMetaData(
              "-ink-" + ink.styleName(), node -> node.property(ink), ink.light()));
    }
  }

  private final Map<Ink, SimpleStyleableObjectProperty<Color>> inks = new EnumMap<>(Ink.class);
  private final SimpleStyleableDoubleProperty letters =
      new SimpleStyleableDoubleProperty(LETTERS, this, "letters", Palette.USUAL_LETTERS_PIXELS);
  private final SimpleStyleableBooleanProperty heavy =
      new SimpleStyleableBooleanProperty(HEAVY, this, "heavyLetters", false);
  private @Nullable Palette palette;

  Inked() {
    INKS.forEach(
        (ink, metaData) ->
            inks.put(
                ink,
                new SimpleStyleableObjectProperty<>(metaData, this, ink.styleName(), ink.light())));
    inks.values().forEach(ink -> ink.addListener((property, before, now) -> changed()));
    letters.addListener((property, before, now) -> changed());
    heavy.addListener((property, before, now) -> changed());
  }

  @Override
  public final List<CssMetaData<? extends Styleable, ?>> getCssMetaData() {
    return FACTORY.getCssMetaData();
  }

  /** What is drawn with now. */
  public final Palette palette() {
    Palette known = palette;
    if (known == null) {
      Map<Ink, Color> now = new EnumMap<>(Ink.class);
      inks.forEach((ink, property) -> now.put(ink, property.get()));
      known = new Palette(now, letters.get(), heavy.get());
      palette = known;
    }
    return known;
  }

  /** Is called at each change of an ink or of the letters; several may follow each other. */
  abstract void inksChanged();

  private void changed() {
    palette = null;
    inksChanged();
  }

  private StyleableProperty<Color> property(Ink ink) {
    SimpleStyleableObjectProperty<Color> property = inks.get(ink);
    if (property == null) {
      throw new IllegalStateException(ink + " is asked for before it is there");
    }
    return property;
  }
}
