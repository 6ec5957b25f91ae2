package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;

class Sha256Test {
    /** FIPS 180-4 examples as published by NIST (one block, two blocks, one million letters). */
    @Test
    void publishedExamples() {
        assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Sha256.of("abc"));
        assertEquals(
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
                Sha256.of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"));
        assertEquals(
                "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0", Sha256.of("a".repeat(1_000_000)));
    }

    /** Oracle: the JDK's own digest, over every length around the block borders. */
    @Test
    void agreesWithTheJdk() throws NoSuchAlgorithmException {
        MessageDigest jdk = MessageDigest.getInstance("SHA-256");
        Random random = new Random(20261125);
        for (int length = 0; length < 300; length++) {
            byte[] bytes = new byte[length];
            random.nextBytes(bytes);
            assertEquals(HexFormat.of().formatHex(jdk.digest(bytes)), Sha256.of(bytes), "length " + length);
        }
    }
}
