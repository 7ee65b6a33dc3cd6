/**
 * What a person types: the commands, what they print, and the exit statuses.
 *
 * <p>Here: one final class per word after {@code datumpeg}, each taking {@link
 * datumpeg.bridge.cli.DatumpegCommand} in its constructor and reading options, console and record
 * file from it. A class is a {@code Callable<Integer>}, or holds {@code @Command} methods for a
 * second word ({@code job add}, {@code job list}), and is listed in {@link
 * datumpeg.bridge.cli.BridgeCommands}. Failures are thrown, never printed: {@link
 * datumpeg.bridge.cli.CommandRunner} turns them into a sentence and an exit status.
 *
 * <p>Not here: anything that another program or the window would want too. Only this room touches
 * {@code System.out}, {@code System.err} and {@code System.exit}, and only through {@link
 * datumpeg.bridge.cli.Console} and the runner, so that tests run every command in-process. Read
 * {@link datumpeg.bridge.cli.DatumpegCommand} first.
 */
@NullMarked
package datumpeg.bridge.cli;

import org.jspecify.annotations.NullMarked;
