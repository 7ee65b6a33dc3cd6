package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.text.Words;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** What a user does to the entries of a form. One thread, the toolkit's when there is one. */
final class FormEdits {
  private final Words words;
  private final Supplier<JobDraft> draft;
  private final Consumer<JobDraft> become;
  private final Runnable refill;
  private final Consumer<String> say;

  /**
   * Edits of a form.
   *
   * @param draft as it stands
   * @param become is given the draft after an edit
   * @param refill called where fields must show their entries anew
   * @param say is given why nothing was done
   */
  FormEdits(
      Words words,
      Supplier<JobDraft> draft,
      Consumer<JobDraft> become,
      Runnable refill,
      Consumer<String> say) {
    this.words = words;
    this.draft = draft;
    this.become = become;
    this.refill = refill;
    this.say = say;
  }

  /** What the user types into a field. */
  void type(FormField field, String typed) {
    String written =
        field.choices().isEmpty()
            ? TypedValue.written(field.shape(), typed, words.figures().lengths().display())
            : typed;
    JobDraft before = draft.get();
    become.accept(
        field.shape() == FormField.Shape.SENTENCE && written.isBlank()
            ? before.blanked(field.path())
            : before.with(field.path(), field.shape().kind(), written));
  }

  /** Takes an entry or a table away. */
  void remove(String path) {
    JobDraft after = draft.get().without(path);
    refill.run();
    become.accept(after);
  }

  /** Adds an opening, named after those there are. */
  void addOpening() {
    become.accept(DraftAdditions.opening(draft.get()));
  }

  /** Adds a meter of the name; one that is there already stays as it is. */
  void addMeter(String name) {
    add(DraftAdditions.meter(draft.get(), name));
  }

  /** Adds a stage of the name; one that is there already stays as it is. */
  void addStage(String name) {
    add(DraftAdditions.stage(draft.get(), name));
  }

  /** Adds a row of the name to a table; one that is there already stays as it is. */
  void addRow(FormTable table, String name) {
    add(DraftAdditions.row(draft.get(), table, name));
  }

  /** Gives a table of corners those of the rectangle of span and length. */
  void beginWithRectangle(FormTable table) {
    become.accept(DraftAdditions.rectangle(draft.get(), table.path()));
  }

  /** Brings a row one place further up. */
  void raise(FormTable table, FormTable.Row row) {
    become.accept(draft.get().raised(table.path(), row.name()));
  }

  private void add(DraftAdditions.Added added) {
    if (added.refused().isEmpty()) {
      become.accept(added.draft());
    } else {
      say.accept(words.text(added.refused(), added.name()));
    }
  }
}
