package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonText;
import datumpeg.bridge.json.JsonValue;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked job of docs/reference-analysis.md comes out as the page says. */
class AnalysisReferenceTest {
  @TempDir Path folder;
  private String text = "";
  private DocumentPage page;

  @BeforeEach
  void readPage() throws IOException {
    page = new DocumentPage("reference-analysis.md");
  }

  private String job() {
    return String.join("\n", page.blocks("toml job").get(0)) + "\n";
  }

  /** Takes the page's job and readings in; returns the document of reduce. */
  private JsonObject reduced() throws IOException {
    TestConsole console = new TestConsole(folder);
    Files.writeString(folder.resolve("job.toml"), job());
    Files.write(folder.resolve("readings.csv"), page.blocks("csv readings").get(0));
    assertEquals(0, console.run("job", "add", "job.toml"), console.err());
    assertEquals(0, console.run("enter", "hollins-04", "readings.csv"), console.err());
    assertEquals(0, console.run("reduce", "hollins-04", "--json"), console.err());
    text = console.out();
    return JsonReader.readObject(text, "reduce");
  }

  @Test
  void everyOutcomeOfTheWorkedJobIsThatOfThePage() throws IOException {
    List<List<String>> found = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (JsonValue one : reduced().array("stages")) {
      JsonObject stage = (JsonObject) one;
      for (JsonValue item : stage.array("outcomes")) {
        JsonObject outcome = (JsonObject) item;
        String name = outcome.text("check") + " " + outcome.text("target");
        found.add(row(names.add(name) ? name : stage.text("stage") + ": " + name, outcome));
      }
    }
    assertEquals(found, page.table("outcome |"));
  }

  @Test
  void everyCheckIsEitherExplainedOrSaidToBeMissing() throws IOException {
    Set<String> explained = new TreeSet<>();
    page.table("check | target | what").forEach(row -> explained.add(row.get(0)));
    String missing =
        page.after("## What it does not do yet").stream()
            .takeWhile(line -> !line.startsWith("- The definition"))
            .collect(Collectors.joining(" "));
    for (String check : CheckNames.ALL) {
      assertTrue(explained.contains(check) != missing.contains("`" + check + "`"), check);
    }
    Set<String> found = new TreeSet<>();
    page.table("outcome |").forEach(row -> found.add(row.get(0).replaceAll("^.*: | .*", "")));
    assertEquals(explained, found, "each check explained has a worked outcome");
  }

  private static List<String> row(String name, JsonObject outcome) {
    String deviation = rounded(outcome.get("deviation"), 3);
    return List.of(
        name,
        deviation.startsWith("-") ? deviation : "+" + deviation,
        rounded(outcome.get("expandedUncertainty"), 3),
        rounded(outcome.get("probability"), 6),
        outcome.get("verdict") instanceof JsonText verdict ? verdict.value() : "");
  }

  private static String rounded(JsonValue value, int decimals) {
    return value instanceof JsonDecimal decimal
        ? decimal.value().setScale(decimals, RoundingMode.HALF_EVEN).toPlainString()
        : "";
  }

  @Test
  void theDocumentIsThatOfThePage() throws IOException {
    reduced();
    List<String> shown = page.blocks("json").get(0);
    assertEquals("", DocumentPage.firstMissing(shown, text.lines().toList()), "not printed there");
  }

  @Test
  void remediesAndNetworkOfTheWorkedJobAreThoseOfThePage() throws IOException {
    JsonObject findings = reduced();
    assertEquals("Pack under the bases: A2: 3 + 1 mm.", remedy(findings, "seat-level", "seats"));
    assertTrue(remedy(findings, "column-plumb", "A2/across").contains("side A by 18.3 ± 5.2 mm"));
    assertTrue(remedy(findings, "clear-span", "1/base").contains("from 3.0 mm to 2.4 mm"));
    JsonObject slab = (JsonObject) stage(findings, "arrival").array("networks").get(0);
    assertEquals(new BigDecimal("0.095896"), ((JsonDecimal) slab.get("probability")).value());
    List<String> slips =
        slab.array("readings").stream()
            .map(reading -> rounded(((JsonObject) reading).get("smallestDetectableSlip"), 2))
            .toList();
    assertEquals(List.of("10.51", "14.00", "10.50", "14.01", "8.40", "8.41"), slips);
  }

  private static JsonObject stage(JsonObject findings, String name) {
    return findings.array("stages").stream()
        .map(JsonObject.class::cast)
        .filter(stage -> stage.text("stage").equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static String remedy(JsonObject findings, String check, String target) {
    return findings.array("stages").stream()
        .flatMap(stage -> ((JsonObject) stage).array("outcomes").stream())
        .map(JsonObject.class::cast)
        .filter(o -> o.text("check").equals(check) && o.text("target").equals(target))
        .findFirst()
        .orElseThrow()
        .text("remedy");
  }

  @Test
  void theSetOutOfTheWorkedJobIsThatOfThePage() {
    SetOut setOut = JobFile.read(job(), "reference-analysis.md").setOut();
    assertEquals(0.032, setOut.portalFrameXMetres(1), 1e-12);
    assertEquals(6.000, setOut.portalFrameXMetres(2), 1e-12);
    assertEquals(11.968, setOut.portalFrameXMetres(3), 1e-12);
    assertEquals(0.214, setOut.columnLineOffsetMetres(), 1e-12);
    assertEquals(8.572, setOut.clearSpanMetres(), 1e-12);
    assertEquals(8.572, setOut.tipDistanceMetres().orElseThrow(), 1e-12);
    assertEquals(0.0521, setOut.bottomCornerShortfallMetres(), 5e-5);
  }

  @Test
  void theAccuracyOfOneReadingIsThatOfThePage() {
    MeterAccuracy accuracy = MeterAccuracy.ofExpanded(1.5, 2, 1);
    assertEquals(0.530, accuracy.repeatability(), 5e-4);
    assertEquals(0.530, accuracy.common(), 5e-4);
    assertEquals(0.604, Math.sqrt(accuracy.independentVariance()), 5e-4);
    assertEquals(1.538, Math.sqrt(accuracy.independentVariance() + 1 + 1), 5e-4);
  }
}
