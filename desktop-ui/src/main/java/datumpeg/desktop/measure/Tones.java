package datumpeg.desktop.measure;

import datumpeg.desktop.background.OneWork;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/**
 * Tones of this machine: one high for accepted, two low for held. A machine without sound stays
 * silent, which the log says once.
 */
final class Tones implements Sounds {
  private static final Logger LOG = System.getLogger(Tones.class.getName());
  private static final float SAMPLES_PER_SECOND = 22_050;
  private static final double LOUDNESS = 90;
  private static final double FADE_SECONDS = 0.01;

  private volatile boolean silent;

  @Override
  public void accepted() {
    play(tone(1320, 0.12));
  }

  @Override
  public void held() {
    byte[] one = tone(440, 0.14);
    byte[] pause = tone(0, 0.07);
    byte[] all = new byte[2 * one.length + pause.length];
    System.arraycopy(one, 0, all, 0, one.length);
    System.arraycopy(one, 0, all, one.length + pause.length, one.length);
    play(all);
  }

  /** Samples of 8 bits; the ends are faded so that they do not click. */
  static byte[] tone(double hertz, double seconds) {
    byte[] samples = new byte[(int) (seconds * SAMPLES_PER_SECOND)];
    for (int i = 0; i < samples.length; i++) {
      double at = i / SAMPLES_PER_SECOND;
      double fade = Math.min(1, Math.min(at, seconds - at) / FADE_SECONDS);
      samples[i] = (byte) (LOUDNESS * fade * Math.sin(2 * Math.PI * hertz * at));
    }
    return samples;
  }

  private void play(byte[] samples) {
    if (!silent) {
      new OneWork("tone", () -> sound(samples), this::cannot).start();
    }
  }

  private void sound(byte[] samples) {
    AudioFormat format = new AudioFormat(SAMPLES_PER_SECOND, 8, 1, true, false);
    try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
      line.open(format);
      line.start();
      line.write(samples, 0, samples.length);
      line.drain();
    } catch (LineUnavailableException | IllegalArgumentException e) {
      cannot(e);
    }
  }

  private void cannot(Throwable why) {
    silent = true;
    LOG.log(Level.INFO, "This machine has no sound; tones are left out: {0}", why.getMessage());
  }
}
