package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.CanonicalJson;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.record.entry.EntryKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;

/** Recomputes the vectors printed in docs/reference-record.md, by our route and by another. */
class RecordDocumentTest {
  private static final Pattern VECTOR =
      Pattern.compile(
          "```json\\n(.*?)\\n```\\s+```text\\n(.*?)\\n```\\s+`([0-9a-f]{64})`", Pattern.DOTALL);

  private record Vector(String row, String canonical, String digest) {}

  private static List<Vector> vectors() throws IOException {
    Path document = Path.of(System.getProperty("datumpeg.root"), "docs/reference-record.md");
    Matcher matcher = VECTOR.matcher(Files.readString(document).replace("\r\n", "\n"));
    List<Vector> vectors = new ArrayList<>();
    while (matcher.find()) {
      vectors.add(new Vector(matcher.group(1), matcher.group(2), matcher.group(3)));
    }
    assertEquals(3, vectors.size());
    return vectors;
  }

  @Test
  void ourDigestsAreThePrintedOnes() throws IOException {
    for (Vector vector : vectors()) {
      RowDigest.Row row = row(vector);
      assertEquals(vector.canonical(), RowDigest.canonicalText(row));
      assertEquals(vector.digest(), new RowDigest().of(row));
    }
  }

  @Test
  void anotherCanonicalizerComesToThePrintedDigests() throws IOException, NoSuchAlgorithmException {
    for (Vector vector : vectors()) {
      byte[] canonical = new JsonCanonicalizer(vector.row()).getEncodedUTF8();
      assertEquals(vector.canonical(), new String(canonical, StandardCharsets.UTF_8));
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(canonical);
      assertEquals(vector.digest(), HexFormat.of().formatHex(digest));
    }
  }

  @Test
  void thePrintedRowsAreAChain() throws IOException {
    String previous = RowDigest.NO_PREVIOUS;
    for (Vector vector : vectors()) {
      assertEquals(previous, row(vector).previous());
      previous = vector.digest();
    }
  }

  @Test
  void thePrintedBodiesAreWhatTheEntriesWrite() throws IOException {
    for (Vector vector : vectors()) {
      RowDigest.Row row = row(vector);
      JsonObject body = JsonReader.readObject(row.body(), "body");
      EntryKind kind = EntryKind.ofWord(row.kind()).orElseThrow();
      assertEquals(row.body(), CanonicalJson.text(kind.decode(body, OptionalDouble.of(0)).body()));
    }
  }

  @Test
  void everyKindAndColumnIsDescribed() throws IOException {
    String document =
        Files.readString(Path.of(System.getProperty("datumpeg.root"), "docs/reference-record.md"));
    for (EntryKind kind : EntryKind.values()) {
      assertTrue(document.contains("`" + kind.word() + "`"), kind::word);
    }
    for (String column : StoredRows.COLUMNS.split(", ")) {
      assertTrue(document.contains("`" + column + "`"), column);
    }
  }

  private static RowDigest.Row row(Vector vector) {
    JsonObject row = JsonReader.readObject(vector.row(), "vector");
    return new RowDigest.Row(
        row.text("organisation"),
        row.text("job"),
        row.text("kind"),
        row.text("origin"),
        row.integer("sequence"),
        row.text("at"),
        row.text("body"),
        row.text("previous"));
  }
}
