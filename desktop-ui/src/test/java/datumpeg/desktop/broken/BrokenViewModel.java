package datumpeg.desktop.broken;

import datumpeg.analysis.broken.Worldly;
import javafx.scene.Node;

/** A view model that knows the scene, and closes a cycle of rooms. */
public record BrokenViewModel(Node node, Worldly worldly) {}
