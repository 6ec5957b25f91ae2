package org.varwright.report.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Photographs are turned upright and made small; what is none, or too large, is said and not tried. */
class PhotoTest {
    /** 60 by 40, its upper left corner red, its upper right blue, below white. */
    private static BufferedImage picture() {
        BufferedImage picture = new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 60; x++) {
            for (int y = 0; y < 40; y++) {
                Color colour = y >= 20 ? Color.WHITE : x < 30 ? Color.RED : Color.BLUE;
                picture.setRGB(x, y, colour.getRGB());
            }
        }
        return picture;
    }

    private static byte[] written(BufferedImage picture, String kind) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(picture, kind, out);
        return out.toByteArray();
    }

    /** The JPEG with a note of how the camera was held: Exif (CIPA DC-008), one entry in the first directory. */
    private static byte[] held(byte[] jpeg, int orientation) {
        ByteBuffer exif = ByteBuffer.allocate(2 + 2 + 6 + 8 + 2 + 12 + 4);
        exif.putShort((short) 0xFFE1).putShort((short) 34);
        exif.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        exif.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
        exif.putShort((short) 1).putShort((short) 0x0112).putShort((short) 3).putInt(1);
        exif.putShort((short) orientation).putShort((short) 0).putInt(0);
        ByteBuffer all = ByteBuffer.allocate(jpeg.length + exif.capacity());
        return all.put(jpeg, 0, 2)
                .put(exif.array())
                .put(jpeg, 2, jpeg.length - 2)
                .array();
    }

    private static BufferedImage shown(byte[] bytes) throws IOException {
        PhotoReading.Shown shown = assertInstanceOf(PhotoReading.Shown.class, Photo.read(bytes));
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(shown.jpeg()));
        assertEquals(shown.width(), picture.getWidth());
        assertEquals(shown.height(), picture.getHeight());
        return picture;
    }

    private static String colour(BufferedImage picture, int x, int y) {
        Color c = new Color(picture.getRGB(x, y));
        return c.getRed() > 180 && c.getBlue() > 180
                ? "white"
                : c.getRed() > 180 ? "red" : c.getBlue() > 180 ? "blue" : c.toString();
    }

    /** Where the standard says the picture's first row and column are seen; corners named from the upper left, clockwise. */
    @ParameterizedTest
    @CsvSource({
        "1, 60, red, blue, white, white",
        "2, 60, blue, red, white, white",
        "3, 60, white, white, red, blue",
        "4, 60, white, white, blue, red",
        "5, 40, red, white, white, blue",
        "6, 40, white, red, blue, white",
        "7, 40, white, blue, red, white",
        "8, 40, blue, white, white, red"
    })
    void itStandsUpright(int orientation, int width, String one, String two, String three, String four)
            throws IOException {
        BufferedImage picture = shown(held(written(picture(), "jpeg"), orientation));
        assertEquals(width, picture.getWidth());
        int right = picture.getWidth() - 6;
        int bottom = picture.getHeight() - 6;
        assertEquals(one, colour(picture, 5, 5));
        assertEquals(two, colour(picture, right, 5));
        assertEquals(three, colour(picture, right, bottom));
        assertEquals(four, colour(picture, 5, bottom));
    }

    @Test
    void aLargeOneIsMadeSmallAndATransparentOneStandsOnWhite() throws IOException {
        assertTrue(shown(written(new BufferedImage(5_000, 2_500, BufferedImage.TYPE_BYTE_GRAY), "png"))
                        .getWidth()
                <= 1_400);
        BufferedImage clear = new BufferedImage(20, 20, BufferedImage.TYPE_INT_ARGB);
        assertEquals("white", colour(shown(written(clear, "png")), 10, 10));
    }

    @Test
    void whatTheCameraWroteBesideThePictureIsLeftOut() throws IOException {
        PhotoReading.Shown shown =
                assertInstanceOf(PhotoReading.Shown.class, Photo.read(held(written(picture(), "jpeg"), 6)));
        assertTrue(!new String(shown.jpeg(), StandardCharsets.ISO_8859_1).contains("Exif"));
    }

    /** A head that promises ten thousand million points is not followed. */
    @Test
    void aBombIsNotUnpacked() {
        ByteBuffer head = ByteBuffer.allocate(25);
        head.put("IHDR".getBytes(StandardCharsets.US_ASCII)).putInt(100_000).putInt(100_000);
        head.put(new byte[] {8, 2, 0, 0, 0});
        CRC32 sum = new CRC32();
        sum.update(head.array(), 0, 17);
        ByteBuffer png = ByteBuffer.allocate(8 + 4 + 17 + 4);
        png.put(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10}).putInt(13);
        png.put(head.array(), 0, 17).putInt((int) sum.getValue());
        PhotoReading.NotShown why = assertInstanceOf(PhotoReading.NotShown.class, Photo.read(png.array()));
        assertTrue(why.reason().contains("100000 by 100000"), why.reason());
    }

    @Test
    void whatIsNoPictureIsSaid() throws IOException {
        for (byte[] bytes : new byte[][] {
            new byte[0],
            "a letter".getBytes(StandardCharsets.UTF_8),
            written(picture(), "gif"),
            java.util.Arrays.copyOf(written(picture(), "png"), 60)
        }) {
            assertInstanceOf(PhotoReading.NotShown.class, Photo.read(bytes));
        }
    }

    /** Whatever the bytes are, the answer is a value. */
    @Test
    void noBytesThrow() throws IOException {
        long seed = 20_261_125L;
        Random random = new Random(seed);
        byte[] jpeg = held(written(picture(), "jpeg"), 6);
        int shown = 0;
        for (int i = 0; i < 400; i++) {
            byte[] broken = jpeg.clone();
            for (int k = 0; k < 1 + random.nextInt(8); k++) {
                broken[random.nextInt(broken.length)] = (byte) random.nextInt();
            }
            try {
                shown += Photo.read(broken) instanceof PhotoReading.Shown ? 1 : 0;
            } catch (RuntimeException e) {
                throw new AssertionError("seed " + seed + ", " + i, e);
            }
        }
        assertTrue(shown > 0, "some are still pictures");
    }
}
