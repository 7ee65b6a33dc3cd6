package datumpeg.bridge.fuzz;

/** Where the fuzzer enters; the system property {@code datumpeg.fuzz.target} says which target. */
public final class FuzzEntry {
  private static final FuzzTarget TARGET =
      FuzzTarget.valueOf(System.getProperty("datumpeg.fuzz.target", "TEXT_LINE"));

  private FuzzEntry() {}

  /** Called by the fuzzer, by this name. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    TARGET.accept(bytes);
  }
}
