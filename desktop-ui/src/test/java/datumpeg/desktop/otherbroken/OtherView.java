package datumpeg.desktop.otherbroken;

/** A second screen. */
public record OtherView(String text) {}
