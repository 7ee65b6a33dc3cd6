package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.setting.Theme;
import datumpeg.desktop.text.Standing;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DressTest {
  private static final Pattern COLOUR = Pattern.compile("(?m)^\\s+-([a-z-]+): (#?[a-z0-9]+);");

  /** Each colour of the theme by its name. */
  private static Map<String, Color> colours(Theme theme) {
    Matcher matcher = COLOUR.matcher(text(Dress.sheets(theme).get(0)));
    Map<String, Color> colours = new LinkedHashMap<>();
    while (matcher.find()) {
      if (!matcher.group(1).startsWith("fx-font")) {
        colours.put(matcher.group(1), Color.web(matcher.group(2)));
      }
    }
    return colours;
  }

  private static String text(String sheet) {
    try {
      return Files.readString(Path.of(new URI(sheet)), StandardCharsets.UTF_8);
    } catch (IOException | URISyntaxException e) {
      throw new AssertionError(e);
    }
  }

  /** WCAG 2.2 (W3C 2023), definitions of relative luminance and contrast ratio. */
  private static double contrast(Color one, Color other) {
    double light = Math.max(luminance(one), luminance(other));
    double dark = Math.min(luminance(one), luminance(other));
    return (light + 0.05) / (dark + 0.05);
  }

  private static double contrast(Map<String, Color> colours, String one, String other) {
    return contrast(
        colours.getOrDefault(one, Color.TRANSPARENT),
        colours.getOrDefault(other, Color.TRANSPARENT));
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(double part) {
    return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
  }

  /** The worked example of the definition: black on white is 21 to 1. */
  @Test
  void contrastIsThatOfTheDefinition() {
    assertEquals(21, contrast(Color.BLACK, Color.WHITE), 1e-9);
    assertEquals(1, contrast(Color.RED, Color.RED), 1e-9);
  }

  /** WCAG 2.2, success criteria 1.4.3 (4.5 to 1) and 1.4.6 (7 to 1, for the sun). */
  @ParameterizedTest
  @EnumSource(Theme.class)
  void everyInkIsReadOnEveryGround(Theme theme) {
    Map<String, Color> colours = colours(theme);
    double least = theme == Theme.SUN ? 7 : 4.5;
    List<String> inks = new ArrayList<>(List.of("ink", "quiet", "limit", "accent"));
    for (Standing standing : Standing.values()) {
      inks.add(Ink.of(standing).styleName());
    }
    for (String ink : inks) {
      for (String ground : List.of("page", "paper", "raised")) {
        double found = contrast(colours, ink, ground);
        assertTrue(found >= least, theme + ": " + ink + " on " + ground + " is " + found + " to 1");
      }
    }
    assertTrue(contrast(colours, "accent", "accent-text") >= least, theme.id());
    assertTrue(contrast(colours, "ink", "warning") >= least, theme.id());
    assertTrue(contrast(colours, "ink", "chosen") >= least, theme.id());
  }

  /** WCAG 2.2, success criterion 1.4.11: edges of fields and the thumbs of scroll bars. */
  @ParameterizedTest
  @EnumSource(Theme.class)
  void edgesOfControlsAreSeen(Theme theme) {
    Map<String, Color> colours = colours(theme);
    for (String ground : List.of("page", "paper", "raised")) {
      double found = contrast(colours, "strong-line", ground);
      assertTrue(found >= 3, theme + ": strong-line on " + ground + " is " + found + " to 1");
    }
  }

  @ParameterizedTest
  @EnumSource(Theme.class)
  void everyThemeNamesTheSameColours(Theme theme) {
    List<String> own = names(theme);
    assertEquals(names(Theme.LIGHT), own);
  }

  private static List<String> names(Theme theme) {
    return colours(theme).keySet().stream()
        .filter(name -> !name.startsWith("fx-"))
        .sorted()
        .toList();
  }

  /** A colour written into the shared sheet would be the same in every theme. */
  @Test
  void sharedSheetNamesNoColourOfItsOwn() {
    String sheet = text(Dress.sheets(Theme.LIGHT).get(1));
    Matcher found = Pattern.compile("#[0-9a-fA-F]{3,8}\\b|: *(white|black)\\b").matcher(sheet);
    assertTrue(!found.find(), () -> "window.css has the colour " + found.group());
  }

  @Test
  void lettersFollowThePercentage() {
    assertEquals("-fx-font-size: 30.0px;", Dress.letters(200));
    assertTrue(URI.create(Dress.sheets(Theme.SUN).get(0)).getPath().endsWith("theme-sun.css"));
  }
}
