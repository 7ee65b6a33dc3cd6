package datumpeg.house;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.EvaluationResult;
import java.lang.reflect.Field;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Shows that every wall can fall: the classes in {@code datumpeg.….broken} of the test sources
 * break them all.
 */
class WallsCanFallTest {
  private static final JavaClasses BROKEN =
      new ClassFileImporter()
          .importPackages(
              "datumpeg.analysis.broken",
              "datumpeg.bridge.broken",
              "datumpeg.bridge.record.broken",
              "datumpeg.desktop.broken",
              "datumpeg.desktop.otherbroken");

  static Stream<Field> walls() {
    return Arrays.stream(WallsTest.class.getDeclaredFields())
        .filter(field -> field.getType() == ArchRule.class);
  }

  @ParameterizedTest
  @MethodSource("walls")
  void wallFindsTheClassThatBreaksIt(Field wall) throws IllegalAccessException {
    ArchRule rule = (ArchRule) wall.get(null);
    EvaluationResult result = rule.evaluate(BROKEN);
    assertTrue(result.hasViolation(), wall.getName() + " found nothing to object to.");
    String report = result.getFailureReport().toString();
    assertTrue(report.contains("broken"), report);
    assertTrue(rule.getDescription().contains(", because "), rule.getDescription());
  }
}
