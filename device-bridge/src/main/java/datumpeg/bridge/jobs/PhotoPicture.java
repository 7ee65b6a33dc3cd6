package datumpeg.bridge.jobs;

import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * A photo's bytes as a small upright JPEG in a data URI (RFC 2397), to be shown in a page. Pure;
 * any thread.
 */
final class PhotoPicture {
  /** The longer side of what is shown: enough for half the width of a printed page at 250 dpi. */
  static final int LONGEST_PIXELS = 900;

  /** Larger ones are not opened: 200 million pixels need some 600 MB. */
  private static final long MOST_PIXELS = 200_000_000L;

  private PhotoPicture() {}

  /** The picture; empty if the bytes are none that can be read here. */
  static Optional<String> dataUri(byte[] bytes) {
    try {
      Optional<BufferedImage> read = read(bytes);
      return read.isEmpty()
          ? Optional.empty()
          : Optional.of(written(upright(read.get(), JpegOrientation.of(bytes))));
    } catch (IOException | NoninvertibleTransformException | RuntimeException e) {
      // Readers of pictures throw what they like on bytes that are damaged.
      return Optional.empty();
    }
  }

  /** Every nth pixel of a large one, so that a photo of any size needs little memory. */
  private static Optional<BufferedImage> read(byte[] bytes) throws IOException {
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        return Optional.empty();
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
        int longest = Math.max(reader.getWidth(0), reader.getHeight(0));
        int step = Math.max(1, longest / (2 * LONGEST_PIXELS));
        ImageReadParam parameters = reader.getDefaultReadParam();
        parameters.setSourceSubsampling(step, step, 0, 0);
        return pixels > MOST_PIXELS ? Optional.empty() : Optional.of(reader.read(0, parameters));
      } finally {
        reader.dispose();
      }
    }
  }

  /** Pixel by pixel: a graphics context would ask for a display where one is named. */
  private static BufferedImage upright(BufferedImage picture, JpegOrientation orientation)
      throws NoninvertibleTransformException {
    int wide = picture.getWidth();
    int high = picture.getHeight();
    double scale = Math.min(1, LONGEST_PIXELS / (double) Math.max(wide, high));
    int toWide = Math.max(1, (int) Math.round(scale * (orientation.turned() ? high : wide)));
    int toHigh = Math.max(1, (int) Math.round(scale * (orientation.turned() ? wide : high)));
    BufferedImage made = new BufferedImage(toWide, toHigh, BufferedImage.TYPE_INT_RGB);
    AffineTransform back = orientation.upright(wide, high).createInverse();
    back.scale(1 / scale, 1 / scale);
    for (int y = 0; y < toHigh; y++) {
      for (int x = 0; x < toWide; x++) {
        made.setRGB(x, y, mean(picture, back, x, y));
      }
    }
    return made;
  }

  /** The mean of four places within a pixel, on white where the picture lets it through. */
  private static int mean(BufferedImage picture, AffineTransform back, int x, int y) {
    double[] places = {
      x + 0.25, y + 0.25, x + 0.75, y + 0.25, x + 0.25, y + 0.75, x + 0.75, y + 0.75
    };
    back.transform(places, 0, places, 0, 4);
    int red = 0;
    int green = 0;
    int blue = 0;
    for (int i = 0; i < places.length; i += 2) {
      int column = Math.max(0, Math.min(picture.getWidth() - 1, (int) places[i]));
      int row = Math.max(0, Math.min(picture.getHeight() - 1, (int) places[i + 1]));
      int pixel = picture.getRGB(column, row);
      red += onWhite(pixel >> 16, pixel >>> 24);
      green += onWhite(pixel >> 8, pixel >>> 24);
      blue += onWhite(pixel, pixel >>> 24);
    }
    return (red / 4) << 16 | (green / 4) << 8 | blue / 4;
  }

  private static int onWhite(int colour, int alpha) {
    return ((colour & 0xFF) * alpha + 255 * (255 - alpha)) / 255;
  }

  private static String written(BufferedImage picture) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    if (!ImageIO.write(picture, "jpeg", out)) {
      throw new IOException("this Java platform writes no JPEG");
    }
    return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(out.toByteArray());
  }
}
