package datumpeg.bridge.link.replay;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The first line of a capture.
 *
 * @param job the job measured
 * @param stage its stage
 * @param links what each link name of the lines below stands for, in order
 */
public record CaptureHeader(String job, String stage, Map<String, CapturedLink> links) {
  /** The version of the form of captures this program writes and reads. */
  public static final int VERSION = 1;

  /**
   * One link of a capture.
   *
   * @param link its address
   * @param meter the user's name of the instrument, where given
   * @param profile identity of the profile, {@code id@sha256}, where bytes are decoded
   */
  public record CapturedLink(String link, @Nullable String meter, @Nullable String profile) {}

  public CaptureHeader {
    links = Collections.unmodifiableMap(new LinkedHashMap<>(links));
  }
}
