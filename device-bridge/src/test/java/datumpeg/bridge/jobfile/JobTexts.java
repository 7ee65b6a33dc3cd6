package datumpeg.bridge.jobfile;

/** Job-file texts for tests; names are invented. */
public final class JobTexts {
  /** Every table of a job file: a 9 m × 18 m shed of three bays. */
  public static final String LARKRISE =
      """
      [job]
      id = "larkrise-01"
      organisation = "local"
      name = "Hay shed, Larkrise Farm"
      site = "Larkrise"
      crew = "Amber"
      slab_by = "Stonecroft"
      started = 2026-03-02
      bearing = "35 deg"
      erected_from = 1

      [building]
      span = "9 m"
      length = "18 m"
      eave_height = "3.6 m"
      roof = "gable"
      pitch = "10 deg"
      bays = ["6 m", "6 m", "6 m"]
      end_line_offset = "0 mm"

      [sections]
      column_depth = "150 mm"
      column_width = "64 mm"
      side_girt_depth = "64 mm"
      end_girt_depth = "64 mm"
      rafter_depth = "150 mm"

      [slab]
      corners = { A1 = ["0 m","0 m"], A4 = ["18 m","0 m"], B4 = ["18 m","9 m"], B1 = ["0 m","9 m"] }
      level_points = ["slab.A1", "slab.A4", "seat.A2", "seat.B2", "slab.@(9.0;4.5)"]
      plates = ["5 mm", "1 mm", "2 mm", "3 mm", "10 mm"]

      [openings.D1]
      wall = "end 1"
      from = "2.5 m"
      opening_width = "2.88 m"
      height = "3.0 m"

      [tolerances]
      slab-size = "10 mm"
      slab-diagonals = "10 mm"
      slab-square = "8 mm"
      slab-level = { lower = "-10 mm", upper = "5 mm" }
      column-plumb = { ratio = 500, cap = "25 mm", source = "project specification" }
      portal-plumb = { rule = "en1090-portal-mean", source = "project specification 3.2" }
      frame-spacing = "en1090-column-spacing-1"

      [meters.laser]
      quantity = "distance"
      expanded_uncertainty = "1.5 mm"
      coverage = 2
      resolution = "1 mm"

      [meters.spirit]
      quantity = "tilt"
      repeatability = "0.05 deg"
      common = "0.02 deg"

      [points]
      slab = "1 mm"

      [decision]
      accept = 0.95
      reject = 0.05

      [stages.curing]
      after = "arrival"
      checks = ["slab-level"]
      questions = { edge-sound = "Is the edge sound?" }
      hold_point = true
      """;

  private JobTexts() {}

  /** {@link #LARKRISE} with one piece of text replaced; the piece must be there. */
  public static String larkriseWith(String old, String replacement) {
    if (!LARKRISE.contains(old)) {
      throw new IllegalArgumentException("not in the text: " + old);
    }
    return LARKRISE.replace(old, replacement);
  }
}
