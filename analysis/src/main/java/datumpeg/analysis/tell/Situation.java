package datumpeg.analysis.tell;

import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.remedy.Movability;
import java.util.Optional;

/** What a move depends on besides the outcome: the plan, the props, and what can still move. */
public record Situation(SetOut setOut, Optional<PropGeometry> props, Movability movability) {}
