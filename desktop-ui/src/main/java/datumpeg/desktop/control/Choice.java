package datumpeg.desktop.control;

/** Something that can be chosen: how the model calls it, and its name on screen. */
public record Choice(String id, String name) {}
