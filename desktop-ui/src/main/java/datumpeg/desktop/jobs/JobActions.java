package datumpeg.desktop.jobs;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * What can be done from the list of jobs.
 *
 * @param begin begins a new job
 * @param change begins the next revision of a job
 * @param takeFile begins a job from a job file
 * @param file the newest job file of a job; may take long, and is asked off the JavaFX thread
 */
public record JobActions(
    Runnable begin,
    Consumer<String> change,
    Consumer<Path> takeFile,
    Function<String, Optional<String>> file) {}
