package datumpeg.bridge.cli;

import java.util.List;

/** The commands that need no window, in the order in which the help lists them. */
public final class BridgeCommands {
  private BridgeCommands() {}

  /** New instances of all of them, belonging to {@code program}. */
  public static List<Object> of(DatumpegCommand program) {
    return List.of(
        new JobCommand(program),
        new SetOutCommand(program),
        new MeasureCommand(program),
        new WatchCommand(program),
        new CollectCommand(program),
        new ReplayCommand(program),
        new EnterCommand(program),
        new VoidCommand(program),
        new MovedCommand(program),
        new SignCommand(program),
        new AcceptCommand(program),
        new ReduceCommand(program),
        new ReportCommand(program),
        new TrendCommand(program),
        new CompareCommand(program),
        new LimitsCommand(program),
        new MetersCommand(program),
        new VerifyCommand(program),
        new DemoCommand(program));
  }
}
