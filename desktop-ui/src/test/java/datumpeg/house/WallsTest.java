package datumpeg.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The walls of the house. {@link WallsCanFallTest} shows that each can be broken. */
@AnalyzeClasses(
    packages = "datumpeg",
    importOptions = {ImportOption.DoNotIncludeTests.class, WallsTest.NoTestJars.class})
class WallsTest {

  /** Test jars of other modules are on the class path too. */
  static final class NoTestJars implements ImportOption {
    @Override
    public boolean includes(Location location) {
      return !location.contains("-tests.jar");
    }
  }

  @ArchTest
  static final ArchRule roomsFormNoCycles =
      slices()
          .matching("datumpeg.(**)")
          .should()
          .beFreeOfCycles()
          .because("a room that needs its neighbour's neighbour back cannot be read by itself");

  @ArchTest
  static final ArchRule analysisStandsAlone =
      noClasses()
          .that()
          .resideInAPackage("datumpeg.analysis..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("datumpeg.bridge..", "datumpeg.desktop..")
          .because("what was found must follow from job, readings and limits alone");

  @ArchTest
  static final ArchRule bridgeKnowsNoWindow =
      noClasses()
          .that()
          .resideInAPackage("datumpeg.bridge..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("datumpeg.desktop..")
          .because("meters are read and records kept on machines without a screen");

  @ArchTest
  static final ArchRule analysisTouchesNoWorld =
      noClasses()
          .that()
          .resideInAPackage("datumpeg.analysis..")
          .should()
          .dependOnClassesThat(
              resideInAnyPackage(
                  "java.io",
                  "java.nio.file..",
                  "java.net..",
                  "java.sql..",
                  "java.awt..",
                  "javafx.."))
          .orShould(WallConditions.askTheClockOrTheMachine())
          .because("equal inputs must give equal bytes, whatever the machine and the hour");

  @ArchTest
  static final ArchRule analysisCountsTheSameEverywhere =
      classes()
          .that()
          .resideInAPackage("datumpeg.analysis..")
          .should(WallConditions.useStrictMathForTranscendentals())
          .because("Math's functions may differ in the last bit between JDKs; StrictMath's do not");

  @ArchTest
  static final ArchRule analysisFormatsTheSameEverywhere =
      noClasses()
          .that()
          .resideInAPackage("datumpeg.analysis..")
          .should()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(String.class, "formatted", Object[].class)
          .because("without a Locale the machine's own puts its comma and digits into the answer");

  @ArchTest
  static final ArchRule serialLibraryHasOneRoom =
      LibraryWalls.only("com.fazecast..", "datumpeg.bridge.link.serial");

  @ArchTest
  static final ArchRule busLibraryHasOneRoom =
      LibraryWalls.only("org.freedesktop.dbus..", "datumpeg.bridge.link.ble.bluez");

  @ArchTest
  static final ArchRule bluezLibraryHasOneRoom =
      LibraryWalls.only("org.bluez..", "datumpeg.bridge.link.ble.bluez");

  @ArchTest
  static final ArchRule nativeBluetoothHasOneRoom =
      LibraryWalls.only("tinyb..", "datumpeg.bridge.link.ble.tinyb");

  @ArchTest
  static final ArchRule modbusLibraryHasOneRoom =
      LibraryWalls.only("com.digitalpetri..", "datumpeg.bridge.link.modbus");

  @ArchTest
  static final ArchRule sqlHasOneRoom =
      LibraryWalls.only("java.sql..", "datumpeg.bridge.record.sqlite");

  @ArchTest
  static final ArchRule sqliteHasOneRoom =
      LibraryWalls.only("org.sqlite..", "datumpeg.bridge.record.sqlite");

  @ArchTest
  static final ArchRule tomlLibraryHasOneRoom =
      LibraryWalls.only("org.tomlj..", "datumpeg.bridge.toml");

  @ArchTest
  static final ArchRule jsonLibraryHasOneRoom =
      LibraryWalls.only("com.fasterxml.jackson..", "datumpeg.bridge.json");

  @ArchTest
  static final ArchRule uuidLibraryHasTheRecord =
      LibraryWalls.only("com.fasterxml.uuid..", "datumpeg.bridge.record..");

  @ArchTest
  static final ArchRule csvLibraryHasOneRoom =
      LibraryWalls.only("de.siegmar..", "datumpeg.bridge.exchange");

  @ArchTest
  static final ArchRule commandLineLibraryHasTheCommands =
      LibraryWalls.only("picocli..", "datumpeg.bridge.cli", "datumpeg.desktop.app");

  @ArchTest
  static final ArchRule toolkitHasTheWindow = LibraryWalls.only("javafx..", "datumpeg.desktop..");

  @ArchTest
  static final ArchRule matrixLibraryStaysWhereThingsAreSolved =
      LibraryWalls.only("org.ejml..", "datumpeg.analysis.adjust", "datumpeg.analysis.remedy");

  @ArchTest
  static final ArchRule onlyTheCommandLinePrintsAndExits =
      noClasses()
          .that()
          .resideOutsideOfPackage("datumpeg.bridge.cli")
          .and()
          .doNotHaveFullyQualifiedName("datumpeg.bridge.link.ble.tinyb.TinybChild")
          .should(WallConditions.printOrExit())
          .because(
              "only there is it known who reads standard output, and when the process may end");

  @ArchTest
  static final ArchRule nothingStaticChanges =
      classes()
          .should(WallConditions.keepNoStaticState())
          .because("what one test or window changed must not be seen by another");

  @ArchTest
  static final ArchRule viewModelsKnowNoScene =
      noClasses()
          .that()
          .haveSimpleNameEndingWith("ViewModel")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javafx.scene..", "javafx.stage..")
          .because("what a screen says must be testable without a toolkit")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule viewsSeeTheirViewModelOnly =
      noClasses()
          .that()
          .haveSimpleNameEndingWith("View")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("datumpeg.bridge.record..", "datumpeg.bridge.link..")
          .because("a View draws what its view model says, and never waits for a disk or a port")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule screensDoNotKnowEachOther =
      classes()
          .that()
          .resideInAPackage("datumpeg.desktop..")
          .and()
          .resideOutsideOfPackage("datumpeg.desktop.app..")
          .should(WallConditions.notDependOnOtherScreens())
          .because("a screen must be readable and removable by itself")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule roomsAreNamedAfterWhatIsInThem =
      noClasses()
          .should()
          .resideInAnyPackage("..util..", "..common..", "..helper..", "..manager..", "..impl..")
          .because("such a room has no door policy: everything ends up in it");

  @ArchTest
  static final ArchRule roomsSayWhatTheyAreFor =
      classes()
          .should(WallConditions.resideInDescribedRooms())
          .because("package-info.java is where a newcomer learns what belongs there");

  @ArchTest
  static final ArchRule modulesShareNoRoom =
      classes()
          .should(WallConditions.resideInTheirModulesPackages())
          .because("a package split over two jars can see private parts by accident");
}
