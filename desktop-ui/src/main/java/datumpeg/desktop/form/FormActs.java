package datumpeg.desktop.form;

/** What a user does to the fields of a form. The JavaFX thread only. */
interface FormActs {
  /** Something was typed into a field. */
  void type(FormField field, String text);

  /** An entry or a table is taken away. */
  void remove(String path);

  /** The field of a path took the keys; none for an empty path. */
  void focus(String path);

  /** A row of a name is added. */
  void addRow(FormTable table, String name);

  /** The corners begin with those of a rectangle. */
  void beginWithRectangle(FormTable table);

  /** A row is brought further up. */
  void raise(FormTable table, FormTable.Row row);
}
