package datumpeg.bridge.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures painted here: a quarter of each colour, so that every turn and mirror shows. */
class PhotoPictureTest {
  private static final List<Color> QUARTERS =
      List.of(Color.RED, Color.GREEN, Color.BLUE, Color.YELLOW);

  /** Upper left, upper right, lower left, lower right. */
  private static BufferedImage quarters(int wide, int high) {
    BufferedImage picture = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < wide; x++) {
      for (int y = 0; y < high; y++) {
        int quarter = (x < wide / 2 ? 0 : 1) + (y < high / 2 ? 0 : 2);
        picture.setRGB(x, y, QUARTERS.get(quarter).getRGB());
      }
    }
    return picture;
  }

  private static byte[] bytes(BufferedImage picture, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertTrue(ImageIO.write(picture, format, out));
    return out.toByteArray();
  }

  /** A JPEG with the header of a camera that was held so. */
  private static byte[] held(byte[] jpeg, int code, ByteOrder order) {
    ByteBuffer header = ByteBuffer.allocate(36);
    header
        .putShort((short) 0xFFE1)
        .putShort((short) 34)
        .put("Exif\0\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    header.order(order);
    header.put(
        (order == ByteOrder.BIG_ENDIAN ? "MM" : "II")
            .getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    header.putShort((short) 42).putInt(8).putShort((short) 1);
    header.putShort((short) 274).putShort((short) 3).putInt(1).putShort((short) code);
    header.putShort((short) 0).putInt(0);
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + header.capacity());
    return all.put(jpeg, 0, 2).put(header.array()).put(jpeg, 2, jpeg.length - 2).array();
  }

  private static BufferedImage shown(byte[] bytes) throws IOException {
    String uri = PhotoPicture.dataUri(bytes).orElseThrow();
    String begin = "data:image/jpeg;base64,";
    assertTrue(uri.startsWith(begin), uri.substring(0, 40));
    byte[] jpeg = Base64.getDecoder().decode(uri.substring(begin.length()));
    return ImageIO.read(new ByteArrayInputStream(jpeg));
  }

  /** The colour in the middle of each quarter, by its first letter. */
  private static String colours(BufferedImage picture) {
    StringBuilder found = new StringBuilder();
    for (int quarter = 0; quarter < 4; quarter++) {
      int x = picture.getWidth() * (quarter % 2 == 0 ? 1 : 3) / 4;
      int y = picture.getHeight() * (quarter < 2 ? 1 : 3) / 4;
      Color at = new Color(picture.getRGB(x, y));
      int nearest = 0;
      for (int i = 1; i < 4; i++) {
        nearest = apart(at, QUARTERS.get(i)) < apart(at, QUARTERS.get(nearest)) ? i : nearest;
      }
      found.append("RGBY".charAt(nearest));
    }
    return found.toString();
  }

  private static int apart(Color one, Color other) {
    return Math.abs(one.getRed() - other.getRed())
        + Math.abs(one.getGreen() - other.getGreen())
        + Math.abs(one.getBlue() - other.getBlue());
  }

  @Test
  void largePictureBecomesASmallOneOfTheSameShape() throws IOException {
    BufferedImage shown = shown(bytes(quarters(4000, 3000), "jpeg"));
    assertEquals(PhotoPicture.LONGEST_PIXELS, shown.getWidth());
    assertEquals(675, shown.getHeight(), 1);
    assertEquals("RGBY", colours(shown));
  }

  @Test
  void smallPictureStaysAsLargeAsItIs() throws IOException {
    BufferedImage shown = shown(bytes(quarters(60, 40), "png"));
    assertEquals(60, shown.getWidth());
    assertEquals(40, shown.getHeight());
    assertEquals("RGBY", colours(shown));
  }

  /**
   * What the viewer must see of red green over blue yellow stored: code 1 as stored, 2 mirrored, 3
   * upside down, 4 both, 5 to 8 the same lying on their side (JEITA CP-3451, 4.6.4, table of the
   * 0th row and column: 6 is "right, top", stored turned so that its first row is the right side).
   */
  @ParameterizedTest
  @CsvSource({"1,RGBY", "2,GRYB", "3,YBGR", "4,BYRG", "5,RBGY", "6,BRYG", "7,YGBR", "8,GYRB"})
  void pictureIsShownUprightAsTheCameraWasHeld(int code, String seen) throws IOException {
    byte[] jpeg = bytes(quarters(64, 32), "jpeg");
    for (ByteOrder order : List.of(ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN)) {
      BufferedImage shown = shown(held(jpeg, code, order));
      assertEquals(seen, colours(shown), order.toString());
      assertEquals(code > 4 ? 32 : 64, shown.getWidth());
    }
  }

  @Test
  void whatIsNoPictureIsNone() throws IOException {
    assertEquals(Optional.empty(), PhotoPicture.dataUri(new byte[0]));
    assertEquals(
        Optional.empty(),
        PhotoPicture.dataUri("no picture".getBytes(java.nio.charset.StandardCharsets.UTF_8)));
    byte[] png = bytes(quarters(60, 40), "png");
    assertEquals(Optional.empty(), PhotoPicture.dataUri(Arrays.copyOf(png, 40)));
  }

  @Test
  void damagedHeaderOfACameraIsPassedOver() throws IOException {
    byte[] jpeg = bytes(quarters(64, 32), "jpeg");
    assertEquals(JpegOrientation.UPRIGHT, JpegOrientation.of(held(jpeg, 9, ByteOrder.BIG_ENDIAN)));
    assertEquals(
        JpegOrientation.UPRIGHT,
        JpegOrientation.of(Arrays.copyOf(held(jpeg, 6, ByteOrder.BIG_ENDIAN), 25)));
    assertEquals(JpegOrientation.UPRIGHT, JpegOrientation.of(jpeg));
    assertEquals(JpegOrientation.UPRIGHT, JpegOrientation.of(new byte[] {1}));
  }
}
