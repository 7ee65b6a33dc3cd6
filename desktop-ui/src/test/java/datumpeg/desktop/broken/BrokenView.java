package datumpeg.desktop.broken;

import datumpeg.bridge.record.broken.Rows;
import datumpeg.desktop.otherbroken.OtherView;

/** A View that sees the record and another screen. */
public record BrokenView(Rows rows, OtherView other) {}
