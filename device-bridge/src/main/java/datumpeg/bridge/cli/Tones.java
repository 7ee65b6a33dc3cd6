package datumpeg.bridge.cli;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.SourceDataLine;

/** Whether this machine can make itself heard. */
final class Tones {
  private Tones() {}

  static boolean canBePlayed() {
    try {
      AudioFormat format = new AudioFormat(44_100, 16, 1, true, false);
      return AudioSystem.isLineSupported(new DataLine.Info(SourceDataLine.class, format));
    } catch (IllegalArgumentException | UnsatisfiedLinkError e) {
      return false;
    }
  }
}
