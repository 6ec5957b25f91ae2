package org.varwright.report.photo;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a camera was held, as it says in the picture's own notes (Exif, CIPA DC-008, tag 0x0112).
 *
 * @param code 1 to 8; 1 is upright
 */
record Orientation(int code) {
    private static final Orientation UPRIGHT = new Orientation(1);
    private static final int TAG = 0x0112;
    private static final int APP1 = 0xE1;
    private static final int START_OF_SCAN = 0xDA;

    /** What a JPEG file says; upright where it says nothing that can be read. */
    static Orientation of(byte[] jpeg) {
        ByteBuffer in = ByteBuffer.wrap(jpeg);
        if (in.remaining() < 4 || in.getShort() != (short) 0xFFD8) {
            return UPRIGHT;
        }
        while (in.remaining() >= 4) {
            int marker = in.getShort() & 0xFFFF;
            int length = in.getShort() & 0xFFFF;
            if ((marker & 0xFF00) != 0xFF00
                    || (marker & 0xFF) == START_OF_SCAN
                    || length < 2
                    || length - 2 > in.remaining()) {
                return UPRIGHT;
            }
            ByteBuffer segment = in.slice(in.position(), length - 2);
            if ((marker & 0xFF) == APP1 && segment.remaining() > 14 && segment.getInt(0) == 0x45786966) {
                return ofExif(segment.slice(6, segment.remaining() - 6));
            }
            in.position(in.position() + length - 2);
        }
        return UPRIGHT;
    }

    private static Orientation ofExif(ByteBuffer tiff) {
        tiff.order(tiff.getShort(0) == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int directory = tiff.getInt(4);
        if (directory < 8 || directory > tiff.limit() - 2) {
            return UPRIGHT;
        }
        int entries = tiff.getShort(directory) & 0xFFFF;
        for (int i = 0; i < entries; i++) {
            int at = directory + 2 + 12 * i;
            if (at > tiff.limit() - 12) {
                return UPRIGHT;
            }
            if ((tiff.getShort(at) & 0xFFFF) == TAG) {
                int code = tiff.getShort(at + 8) & 0xFFFF;
                return code >= 1 && code <= 8 ? new Orientation(code) : UPRIGHT;
            }
        }
        return UPRIGHT;
    }

    /** Whether width and height change places. */
    boolean isSideways() {
        return code >= 5;
    }

    /** Turns a picture of that size upright, its corner at the origin. */
    AffineTransform turn(double width, double height) {
        return switch (code) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }
}
