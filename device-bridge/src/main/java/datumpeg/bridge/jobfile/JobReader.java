package datumpeg.bridge.jobfile;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.job.SteelTemperatures;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.limits.LimitsTable;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.toml.Table;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts the tables of a job file together. Reads on after a mistake as far as that makes sense. */
final class JobReader {
  private final LimitsTable limits;

  JobReader(LimitsTable limits) {
    this.limits = limits;
  }

  /** The job; empty only if mistakes were added. */
  Optional<Job> read(Table document) {
    Mistakes mistakes = document.mistakes();
    if (!mistakes.isEmpty()) {
      return Optional.empty();
    }
    Optional<SectionsTable> sections = required(document, "sections").flatMap(SectionsTable::read);
    Optional<Building> building =
        required(document, "building").flatMap(table -> BuildingTable.read(table, sections));
    Optional<JobIdentity> identity =
        required(document, "job").flatMap(table -> IdentityTable.read(table, building));
    Optional<SetOut> setOut = setOut(document, building);
    Map<String, Tolerance> tolerances =
        TolerancesTable.read(document.findTable("tolerances"), limits);
    Map<String, Meter> meters = MetersTable.read(document.findTable("meters"));
    Map<String, Double> points = PointsTable.read(document.findTable("points"));
    DecisionRule decision = DecisionTable.read(document.findTable("decision"));
    Optional<PropGeometry> props = PropsTable.read(document.findTable("props"));
    List<Stage> stages = StagesTable.read(document.findTable("stages"));
    SteelTemperatures steel = TemperatureTable.read(document);
    document.refuseOthers();
    return identity.isEmpty() || setOut.isEmpty() || !mistakes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Job(
                identity.get(),
                setOut.get(),
                tolerances,
                meters,
                points,
                decision,
                stages,
                props,
                steel));
  }

  private static Optional<Table> required(Table document, String name) {
    if (document.find(name).isEmpty()) {
      document.mistake("The table [" + name + "] is missing.");
    }
    return document.findTable(name);
  }

  private static Optional<SetOut> setOut(Table document, Optional<Building> building) {
    Optional<Table> slabTable = document.findTable("slab");
    List<Opening> openings = OpeningsTable.read(document.findTable("openings"), building);
    Details details = DetailsTables.read(document, building);
    Optional<Slab> slab = SlabTable.read(slabTable, building);
    return building.isPresent() && slab.isPresent()
        ? Optional.of(new SetOut(building.get(), slab.get(), openings, details))
        : Optional.empty();
  }
}
