package org.varwright.job;

import java.nio.charset.StandardCharsets;

/**
 * The hash of a text.
 *
 * <p><b>Source.</b> FIPS 180-4. Own code, because the browser build has no {@code MessageDigest}; the tests hold it against the JDK's.
 */
public final class Sha256 {
    private static final String HEX = "0123456789abcdef";
    private static final int BLOCK = 64;
    /** The first 32 bits of the fractional parts of the cube roots of the first 64 primes. */
    private static final int[] ROUND = {
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2
    };

    private Sha256() {}

    /** SHA-256 of the UTF-8 bytes of the text, as 64 small hexadecimal digits. */
    public static String of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    /** SHA-256 of the bytes, as 64 small hexadecimal digits. */
    public static String of(byte[] bytes) {
        int[] state = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
        byte[] padded = padded(bytes);
        for (int at = 0; at < padded.length; at += BLOCK) {
            block(state, padded, at);
        }
        StringBuilder hex = new StringBuilder(64);
        for (int word : state) {
            for (int shift = 28; shift >= 0; shift -= 4) {
                hex.append(HEX.charAt((word >>> shift) & 0xf));
            }
        }
        return hex.toString();
    }

    private static byte[] padded(byte[] bytes) {
        int length = (bytes.length + 9 + BLOCK - 1) / BLOCK * BLOCK;
        byte[] padded = new byte[length];
        System.arraycopy(bytes, 0, padded, 0, bytes.length);
        padded[bytes.length] = (byte) 0x80;
        long bits = (long) bytes.length * 8;
        for (int i = 0; i < 8; i++) {
            padded[length - 1 - i] = (byte) (bits >>> (8 * i));
        }
        return padded;
    }

    private static void block(int[] state, byte[] bytes, int at) {
        int[] w = new int[BLOCK];
        for (int i = 0; i < 16; i++) {
            int from = at + 4 * i;
            w[i] = (bytes[from] & 0xff) << 24
                    | (bytes[from + 1] & 0xff) << 16
                    | (bytes[from + 2] & 0xff) << 8
                    | (bytes[from + 3] & 0xff);
        }
        for (int i = 16; i < BLOCK; i++) {
            int s0 = Integer.rotateRight(w[i - 15], 7) ^ Integer.rotateRight(w[i - 15], 18) ^ (w[i - 15] >>> 3);
            int s1 = Integer.rotateRight(w[i - 2], 17) ^ Integer.rotateRight(w[i - 2], 19) ^ (w[i - 2] >>> 10);
            w[i] = w[i - 16] + s0 + w[i - 7] + s1;
        }
        int[] v = state.clone();
        for (int i = 0; i < BLOCK; i++) {
            int s1 = Integer.rotateRight(v[4], 6) ^ Integer.rotateRight(v[4], 11) ^ Integer.rotateRight(v[4], 25);
            int t1 = v[7] + s1 + ((v[4] & v[5]) ^ (~v[4] & v[6])) + ROUND[i] + w[i];
            int s0 = Integer.rotateRight(v[0], 2) ^ Integer.rotateRight(v[0], 13) ^ Integer.rotateRight(v[0], 22);
            int t2 = s0 + ((v[0] & v[1]) ^ (v[0] & v[2]) ^ (v[1] & v[2]));
            System.arraycopy(v, 0, v, 1, 7);
            v[4] += t1;
            v[0] = t1 + t2;
        }
        for (int i = 0; i < state.length; i++) {
            state[i] += v[i];
        }
    }
}
