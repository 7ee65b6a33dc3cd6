package datumpeg.house;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.lang.ArchRule;

/** The wall around a library: one room imports it, so one room changes when it does. */
final class LibraryWalls {
  private LibraryWalls() {}

  /** No room but {@code rooms} imports the packages of {@code library}. */
  static ArchRule only(String library, String... rooms) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(rooms)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .because(
            String.join(" and ", rooms)
                + " alone knows "
                + library
                + ", so that it can be replaced, and its traps are met once");
  }
}
