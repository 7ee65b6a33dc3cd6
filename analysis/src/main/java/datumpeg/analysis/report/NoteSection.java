package datumpeg.analysis.report;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.report.writing.Markup;
import java.util.List;

/** What else must be known, most pressing kinds first. */
final class NoteSection {
  private final ReadingNumbers numbers;

  NoteSection(ReadingNumbers numbers) {
    this.numbers = numbers;
  }

  void write(Markup page, List<Note> notes) {
    for (Note.Kind kind : Note.Kind.values()) {
      List<Note> ofKind = notes.stream().filter(note -> note.kind() == kind).toList();
      if (!ofKind.isEmpty()) {
        page.element("h3", heading(kind)).open("ul");
        ofKind.forEach(note -> page.element("li", text(note)));
        page.close();
      }
    }
  }

  private String text(Note note) {
    return note.readingIds().isEmpty()
        ? note.text()
        : note.text() + " (" + numbers.text(note.readingIds()) + ")";
  }

  private static String heading(Note.Kind kind) {
    return switch (kind) {
      case SLIP_SUSPECTED -> "Readings that contradict each other";
      case METER_OUTSIDE -> "Readings of a meter outside its stated accuracy";
      case NOT_MEASURED -> "Not measured";
      case UNDETERMINED -> "Measured, but not enough to tell";
      case NEXT_MEASUREMENT -> "What to measure next";
      case ASSUMED -> "Assumed";
      case ANSWERED -> "Questions answered";
      case INFORMATION -> "Worth knowing";
    };
  }
}
