package datumpeg.bridge.broken.helper;

/** Stands in a room with a name that says nothing. */
public final class Anything {}
