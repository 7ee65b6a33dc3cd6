package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SignAndAcceptCommandTest {
  @TempDir Path folder;
  private SiteFolder site;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    site = SiteFolder.withJob(folder);
    console = site.console;
  }

  private int answers;

  /** Each an hour after the one before. */
  private void answer(String yesOrNo) throws IOException {
    answers++;
    site.write(
        "answers.csv",
        "stage,quantity,target,value,unit,at\ncuring,attribute,edge-sound,"
            + yesOrNo
            + ",,2026-03-02T1"
            + answers
            + ":00:00+01:00\n");
    assertEquals(0, console.run("enter", "larkrise-01", "answers.csv"), console.err());
  }

  private int sign(String... more) {
    List<String> words =
        new java.util.ArrayList<>(List.of("sign", "larkrise-01", "curing", "--by", "M. Reed"));
    words.addAll(List.of(more));
    return console.run(words.toArray(String[]::new));
  }

  private int accept(String item, String reference, String why) {
    return console.run(
        "accept", "larkrise-01", item, "--by", "M. Reed", "--reference", reference, "--why", why);
  }

  @Test
  void stageWithoutReadingsCannotBeSigned() {
    assertEquals(2, sign());
    assertTrue(console.err().contains("nothing was measured or answered"), console.err());
    assertEquals(2, console.run("sign", "larkrise-01", "curling", "--by", "M. Reed"));
    assertTrue(console.err().contains("curing"), console.err());
  }

  @Test
  void openItemsAreNamedAndCloseByAcceptance() throws IOException {
    answer("no");
    assertEquals(2, sign());
    assertTrue(console.err().contains("question edge-sound"), console.err());
    assertTrue(console.err().contains("not-measured"), console.err());
    assertEquals(0, accept("question edge-sound", "letter 7", "made good"), console.err());
    assertTrue(
        console.out().contains("accepted as it is by M. Reed, reference letter 7"), console.out());
    assertTrue(console.out().contains("do not work past it"), console.out());
    assertEquals(0, accept("not-measured", "letter 7", "levels not needed"), console.err());
    assertTrue(console.out().contains("open until it is signed"), console.out());
    assertEquals(0, sign(), console.err());
    assertTrue(console.out().contains("closed, signed by M. Reed"), console.out());
    assertEquals(2, sign());
    assertTrue(console.err().contains("signed already by M. Reed"), console.err());
    assertEquals(0, console.run("verify"), console.err());
  }

  @Test
  void whatChangesAfterwardsOpensItAgain() throws IOException {
    answer("yes");
    accept("not-measured", "letter 7", "levels not needed");
    assertEquals(0, sign(), console.err());
    answer("no");
    assertEquals(2, sign());
    assertTrue(console.err().contains("Is the edge sound? No."), console.err());
  }

  @Test
  void acceptanceNeedsAnOpenItemAReferenceAndAReason() throws IOException {
    answer("yes");
    assertEquals(2, accept("question edge-sound", "letter 7", "why not"));
    assertTrue(console.err().contains("is closed already"), console.err());
    assertEquals(2, accept("slab-squre A1", "letter 7", "trimmed"));
    assertTrue(console.err().contains("no open item 'slab-squre A1'"), console.err());
    assertEquals(2, accept("not-measured", " ", "x"));
    assertTrue(console.err().contains("engineer's reference"), console.err());
    assertEquals(2, accept("not-measured", "letter 7", " "));
    assertTrue(console.err().contains("a reason"), console.err());
  }

  @Test
  void reportSaysHowTheHoldPointsStand() throws IOException {
    answer("no");
    assertEquals(0, accept("question edge-sound", "letter 7", "made good"), console.err());
    assertEquals(0, console.run("report", "larkrise-01", "-o", "all.html"), console.err());
    String page = Files.readString(folder.resolve("all.html")).replaceAll("<[^>]*>|\\s+", " ");
    page = page.replaceAll("\\s+", " ").replace("&#39;", "'");
    assertTrue(page.contains("the hold point is OPEN, 1 of 2 items are open"), page);
    assertTrue(
        page.contains("Accepted as it is: question: Is the edge sound? No; by M. Reed on "), page);
    assertTrue(page.contains("engineer's reference letter 7, because: made good"), page);
    assertTrue(page.contains("nothing was measured there yet: arrival, "), page);
  }

  @Test
  void photoIsCopiedBesideTheRecordUnderItsDigest() throws IOException {
    answer("yes");
    accept("not-measured", "letter 7", "levels not needed");
    Files.write(folder.resolve("edge.jpg"), new byte[] {1, 2, 3});
    assertEquals(2, sign("--photo", "missing.jpg"));
    assertTrue(console.err().contains("There is no photo"), console.err());
    assertEquals(0, sign("--photo", "edge.jpg"), console.err());
    Path kept = console.recordFile().resolveSibling("photos");
    // SHA-256 of the bytes 1, 2, 3, by sha256sum of GNU coreutils.
    assertTrue(Files.exists(kept.resolve("039058c6f2c0cb49-edge.jpg")), kept.toString());
    try (var files = Files.list(kept)) {
      assertEquals(1, files.count());
    }
  }

  @Test
  void reportShowsThePhotosOrSaysWhyNot() throws IOException {
    answer("yes");
    accept("not-measured", "letter 7", "levels not needed");
    BufferedImage picture = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    assertTrue(ImageIO.write(picture, "png", folder.resolve("edge.png").toFile()));
    Files.write(folder.resolve("note.txt"), new byte[] {1, 2, 3});
    assertEquals(0, sign("--photo", "edge.png", "--photo", "note.txt"), console.err());
    String page = report("--stage", "curing");
    assertTrue(page.contains("<img src=\"data:image/jpeg;base64,"), "the picture is in the page");
    assertTrue(page.contains("Photo note.txt. NOT SHOWN: it is no picture"), "and what is none");
    // SHA-256 of the bytes 1, 2, 3, by sha256sum of GNU coreutils.
    assertTrue(
        page.contains("SHA-256 039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81"),
        "its digest");
    assertEquals(page, report("--stage", "curing"), "the same record gives the same page");
    assertFalse(report("--stage", "arrival").contains("Photo "), "of another stage");
    Path kept = console.recordFile().resolveSibling("photos");
    try (var files = Files.list(kept)) {
      Path png = files.filter(file -> file.toString().endsWith(".png")).findFirst().orElseThrow();
      Files.write(png, new byte[] {4});
      assertTrue(report().contains("Photo edge.png. NOT SHOWN: the file in its place is another"));
      Files.delete(png);
      assertTrue(report().contains("Photo edge.png. NOT SHOWN: its file is not in the folder"));
    }
  }

  private String report(String... more) throws IOException {
    List<String> words =
        new java.util.ArrayList<>(List.of("report", "larkrise-01", "-o", "page.html"));
    words.addAll(List.of(more));
    assertEquals(0, console.run(words.toArray(String[]::new)), console.err());
    return Files.readString(folder.resolve("page.html"));
  }

  @Test
  void jsonListsTheItems() throws IOException {
    answer("no");
    assertEquals(0, accept("question edge-sound", "letter 7", "made good"), console.err());
    console.run(
        "accept",
        "larkrise-01",
        "not-measured",
        "--by",
        "M. Reed",
        "--reference",
        "letter 7",
        "--why",
        "not needed",
        "--json");
    JsonObject answer = JsonReader.readObject(console.out(), "out");
    assertEquals("to-sign", answer.text("state"));
    JsonObject item = (JsonObject) answer.array("items").get(0);
    assertEquals("not-measured", item.text("item"));
    assertTrue(item.truth("closed"));
    assertEquals("letter 7", item.text("reference"));
    assertFalse(answer.text("stage").isEmpty());
  }
}
