package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterLanguage;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import datumpeg.bridge.meter.MeterStream;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Whether a profile, put to the bytes as they came, says what the display showed. */
final class Fitting {
  private Fitting() {}

  static MeterProfile profile(MeterLanguage language, Sign sign, AngleZero zero) {
    return new MeterProfile("learned", SerialSettings.DEFAULT, language, sign, zero, null);
  }

  /** The last value of each reading must be the one displayed. */
  static boolean fits(MeterProfile profile, List<Shown> all) {
    MeterStream stream = new MeterStream(profile);
    for (int i = 0; i < all.size(); i++) {
      @Nullable Measured last = last(stream, all.get(i));
      // A frame known by what ends the one before it is not seen the first time.
      boolean missedFirst =
          i == 0 && all.size() > 1 && last == null && profile.language() instanceof BinaryFrames;
      if (!missedFirst && (last == null || !fits(last, all.get(i).displayed()))) {
        return false;
      }
    }
    return true;
  }

  private static boolean fits(Measured measured, Displayed displayed) {
    return measured.dimension() == displayed.dimension() && displayed.fits(measured.siValue());
  }

  private static @Nullable Measured last(MeterStream stream, Shown shown) {
    @Nullable Measured last = null;
    for (Shown.Piece piece : shown.pieces()) {
      for (MeterStream.Message message : stream.accept(piece.bytes(), piece.channel())) {
        if (message.decoded() instanceof Measured measured) {
          last = stream.profile().read(measured);
        }
      }
    }
    return last;
  }
}
