package datumpeg.house;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.AbstractCollection;
import java.util.AbstractMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.NullMarked;

/** What the walls look for in the class files where ArchUnit has no word of its own. */
final class WallConditions {
  private static final Set<String> TRANSCENDENTALS =
      Set.of(
          "sin", "cos", "tan", "asin", "acos", "atan", "atan2", "sinh", "cosh", "tanh", "exp",
          "expm1", "log", "log10", "log1p", "pow", "cbrt", "hypot");
  private static final Set<String> MACHINE = Set.of("currentTimeMillis", "nanoTime", "getenv");
  private static final Set<String> SHARED_SCREEN_PARTS =
      Set.of("app", "background", "chart", "control", "source", "text");
  private static final List<Class<?>> MUTABLE =
      List.of(AbstractCollection.class, AbstractMap.class, StringBuilder.class, ThreadLocal.class);
  private static final Map<String, String> MODULES =
      Map.of(
          "datumpeg.analysis", "analysis",
          "datumpeg.bridge", "device-bridge",
          "datumpeg.desktop", "desktop-ui");

  private WallConditions() {}

  static ArchCondition<JavaClass> useStrictMathForTranscendentals() {
    return forEachAccess(
        "use StrictMath for trigonometric, exponential, logarithmic and power functions",
        access -> calls(access, Math.class, TRANSCENDENTALS));
  }

  /** A condition to stand behind {@code noClasses}. */
  static ArchCondition<JavaClass> askTheClockOrTheMachine() {
    return matching(
        "ask the clock or the machine",
        access ->
            calls(access, System.class, MACHINE)
                || (access.getTargetOwner().getPackageName().equals("java.time")
                    && access.getTarget().getName().equals("now")));
  }

  /** A condition to stand behind {@code noClasses}. */
  static ArchCondition<JavaClass> printOrExit() {
    return matching(
        "print, exit or dump a stack trace",
        access ->
            calls(access, System.class, Set.of("out", "err", "in", "exit"))
                || calls(access, Runtime.class, Set.of("exit", "halt"))
                || access.getTarget().getFullName().endsWith(".printStackTrace()"));
  }

  static ArchCondition<JavaClass> keepNoStaticState() {
    return condition(
        "keep no static state that can change",
        (found, told) ->
            found.getFields().stream()
                .filter(field -> field.getModifiers().contains(JavaModifier.STATIC))
                .filter(field -> !field.getModifiers().contains(JavaModifier.SYNTHETIC))
                .filter(WallConditions::canChange)
                .forEach(field -> told.accept(field.getFullName() + " is static and can change")));
  }

  static ArchCondition<JavaClass> notDependOnOtherScreens() {
    return condition(
        "not depend on other screens",
        (found, told) ->
            found.getDirectDependenciesFromSelf().stream()
                .filter(dependency -> isAnotherScreen(found, dependency.getTargetClass()))
                .map(Dependency::getDescription)
                .forEach(told));
  }

  static ArchCondition<JavaClass> resideInDescribedRooms() {
    return condition(
        "reside in a package with a package-info.java that is @NullMarked",
        (found, told) -> {
          if (!found.getPackage().isAnnotatedWith(NullMarked.class)) {
            told.accept(found.getPackageName() + " has no package-info.java with @NullMarked");
          }
        });
  }

  static ArchCondition<JavaClass> resideInTheirModulesPackages() {
    return condition(
        "reside in the packages of their module",
        (found, told) -> {
          String place = found.getSource().map(source -> source.getUri().toString()).orElse("");
          String module = MODULES.get(firstTwoNames(found.getPackageName()));
          boolean main = place.matches(".*/" + module + "/(target/(?!test-)|\\d).*");
          if (module == null || !main) {
            told.accept(found.getName() + " comes from " + place);
          }
        });
  }

  private static String firstTwoNames(String packageName) {
    String[] names = packageName.split("\\.", -1);
    return names.length < 2 ? packageName : names[0] + "." + names[1];
  }

  private static boolean canChange(JavaField field) {
    Set<JavaModifier> modifiers = field.getModifiers();
    if (!modifiers.contains(JavaModifier.FINAL)) {
      return true;
    }
    JavaClass type = field.getRawType();
    boolean openArray = type.isArray() && !modifiers.contains(JavaModifier.PRIVATE);
    return openArray
        || type.getPackageName().equals("java.util.concurrent.atomic")
        || MUTABLE.stream().anyMatch(type::isAssignableTo);
  }

  private static boolean isAnotherScreen(JavaClass from, JavaClass to) {
    String own = screen(from);
    String other = screen(to);
    boolean otherScreen =
        !other.isEmpty() && !other.equals(own) && !SHARED_SCREEN_PARTS.contains(other);
    return otherScreen || other.equals("app");
  }

  private static String screen(JavaClass type) {
    String[] names = type.getPackageName().split("\\.", -1);
    return type.getPackageName().startsWith("datumpeg.desktop.") ? names[2] : "";
  }

  private static boolean calls(JavaAccess<?> access, Class<?> owner, Set<String> members) {
    return access.getTargetOwner().isEquivalentTo(owner)
        && members.contains(access.getTarget().getName());
  }

  private static ArchCondition<JavaClass> forEachAccess(
      String description, Predicate<JavaAccess<?>> forbidden) {
    return condition(description, (found, told) -> tell(found, forbidden, told));
  }

  private static void tell(
      JavaClass found, Predicate<JavaAccess<?>> forbidden, Consumer<String> told) {
    found.getAccessesFromSelf().stream()
        .filter(forbidden)
        .map(JavaAccess::getDescription)
        .forEach(told);
  }

  private static ArchCondition<JavaClass> condition(
      String description, BiConsumer<JavaClass, Consumer<String>> check) {
    return new ArchCondition<>(description) {
      @Override
      public void check(JavaClass found, ConditionEvents events) {
        check.accept(found, text -> events.add(SimpleConditionEvent.violated(found, text)));
      }
    };
  }

  private static ArchCondition<JavaClass> matching(
      String description, Predicate<JavaAccess<?>> sought) {
    return new ArchCondition<>(description) {
      @Override
      public void check(JavaClass found, ConditionEvents events) {
        tell(found, sought, text -> events.add(SimpleConditionEvent.satisfied(found, text)));
      }
    };
  }
}
