package datumpeg.bridge.cli;

/** The bridge's commands as a process of its own, which a test can kill. */
final class ProgramUnderKill {
  private ProgramUnderKill() {}

  public static void main(String[] arguments) {
    CommandRunner.main(arguments, BridgeCommands::of);
  }
}
