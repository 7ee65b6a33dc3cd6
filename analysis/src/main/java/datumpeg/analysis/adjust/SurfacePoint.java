package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireFinite;
import static datumpeg.analysis.adjust.Door.requireName;

import datumpeg.analysis.uncertainty.Linearised;

/** A point of a surface: place in plan and height, in metres, the heights of one joint estimate. */
public record SurfacePoint(String name, double xMetres, double yMetres, Linearised height) {
  public SurfacePoint {
    requireName("surface point", name);
    requireFinite("surface point", name, "x", xMetres);
    requireFinite("surface point", name, "y", yMetres);
  }
}
