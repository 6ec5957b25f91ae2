package org.varwright.report.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Reads photographs in bounded memory and writes them small: the place where it was taken, and the camera, don't go into a report. */
public final class Photo {
    /** Larger files are not photographs of a step. */
    static final int LARGEST_BYTES = 25 * 1024 * 1024;

    static final long MOST_PIXELS = 200_000_000L;

    /** Longest side in the report; 180 mm at 200 dots an inch. */
    private static final int LONGEST = 1_400;

    private static final float QUALITY = 0.8f;
    private static final Set<String> KINDS = Set.of("jpeg", "png");

    private Photo() {}

    /** The photograph as it goes into a report, or why not. Whatever the bytes are, nothing is thrown. */
    public static PhotoReading read(byte[] bytes) {
        if (bytes.length > LARGEST_BYTES) {
            return new PhotoReading.NotShown("the file has more than " + LARGEST_BYTES / (1024 * 1024) + " MB");
        }
        ImageIO.setUseCache(false);
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return new PhotoReading.NotShown("it is no JPEG or PNG picture");
            }
            ImageReader reader = readers.next();
            try {
                return read(reader, in, bytes);
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            return new PhotoReading.NotShown("the picture can\u2019t be read (" + e.getMessage() + ")");
        }
    }

    private static PhotoReading read(ImageReader reader, ImageInputStream in, byte[] bytes) throws IOException {
        if (!KINDS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
            return new PhotoReading.NotShown("it is no JPEG or PNG picture");
        }
        reader.setInput(in, true, true);
        long width = reader.getWidth(0);
        long height = reader.getHeight(0);
        if (width * height > MOST_PIXELS) {
            return new PhotoReading.NotShown(
                    "it has " + width + " by " + height + " points, too many to be read safely");
        }
        ImageReadParam param = reader.getDefaultReadParam();
        int every = (int) Math.max(1, Math.max(width, height) / LONGEST);
        param.setSourceSubsampling(every, every, 0, 0);
        BufferedImage upright = upright(reader.read(0, param), Orientation.of(bytes));
        return new PhotoReading.Shown(jpeg(upright), upright.getWidth(), upright.getHeight());
    }

    /** Turned as the camera was held, no larger than a page needs, on white where it was transparent. */
    private static BufferedImage upright(BufferedImage picture, Orientation orientation) {
        int longest = Math.max(picture.getWidth(), picture.getHeight());
        double scale = Math.min(1.0, (double) LONGEST / longest);
        int wide = Math.max(1, (int) Math.round(picture.getWidth() * scale));
        int high = Math.max(1, (int) Math.round(picture.getHeight() * scale));
        BufferedImage out = orientation.isSideways()
                ? new BufferedImage(high, wide, BufferedImage.TYPE_INT_RGB)
                : new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = out.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, out.getWidth(), out.getHeight());
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        AffineTransform place = orientation.turn(wide, high);
        place.scale((double) wide / picture.getWidth(), (double) high / picture.getHeight());
        graphics.drawImage(picture, place, null);
        graphics.dispose();
        return out;
    }

    private static byte[] jpeg(BufferedImage picture) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(QUALITY);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(picture, null, null), param);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }
}
