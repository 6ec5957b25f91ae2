package org.varwright.archive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;
import org.varwright.job.Fact;
import org.varwright.job.JobLog;
import org.varwright.job.Sha256;
import org.varwright.job.Walk;
import org.varwright.problem.VarwrightException;
import org.varwright.report.photo.Photo;
import org.varwright.report.photo.PhotoReading;

/** Packed files that were damaged on their way, or made to do harm: read, or refused in words, in bounded memory. */
@SuppressWarnings("NullAway.Init") // JUnit sets it
class AnyFileLawTest {
    private static final Path DEMO = Path.of("..", "examples", "demo");
    private static final String PHOTO = "a photo of bay 2, long enough that a change of its bytes is likely to hit it";

    @TempDir
    private Path folder;

    @Test
    void jobArchives() throws IOException {
        byte[] good = archive();
        Seeds.hold("job archives", 400, random -> {
                    Path file = Files.write(
                            folder.resolve("job.zip"),
                            random.nextInt(3) == 0 ? Mutation.bytes(random, good) : repacked(random, good));
                    try (OpenArchive archive = OpenArchive.of(file)) {
                        JobLog log = archive.log();
                        assertEquals("spring", log.job());
                        for (String hash : archive.attachments()) {
                            ByteArrayOutputStream out = new ByteArrayOutputStream();
                            archive.copy(hash, out);
                            assertEquals(
                                    hash,
                                    Sha256.of(out.toString(StandardCharsets.UTF_8)),
                                    "what comes out is what its name says");
                        }
                        return Seeds.Outcome.TAKEN;
                    } catch (VarwrightException refused) {
                        return inWords(refused);
                    }
                })
                .requireBoth(0.02);
    }

    private byte[] archive() throws IOException {
        Walk walk = new Walk("tablet-a", JobLog.empty("spring"), 1_795_000_000_000L);
        walk.yes(new Fact.Opened(
                "alarm",
                Files.readString(DEMO.resolve("lantern-mesa-1.bank.yaml")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        walk.yes(new Fact.Attached("a.jpg", "image/jpeg", Sha256.of(PHOTO), PHOTO.length()));
        Path photo = Files.writeString(folder.resolve("photo"), PHOTO);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JobArchive.write(walk.job().log(), hash -> Optional.of(photo), out);
        return out.toByteArray();
    }

    /** Packed again by somebody who changes what is in it, so that every sum of the format is right. */
    private static byte[] repacked(Random random, byte[] good) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(good));
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                byte[] content = in.readAllBytes();
                String name = random.nextInt(6) == 0
                        ? Mutation.text(random, entry.getName()).replaceAll("\\p{Cs}", "?")
                        : entry.getName();
                int copies = random.nextInt(12) == 0 ? 2 : 1;
                for (int copy = 0; copy < copies && name.length() < 60_000; copy++) {
                    zip.putNextEntry(new ZipEntry(copy == 0 ? name : name + "/"));
                    zip.write(random.nextInt(4) == 0 ? Mutation.bytes(random, content) : content);
                    zip.closeEntry();
                }
            }
        } catch (ZipException twice) {
            return Mutation.bytes(random, good);
        }
        return out.toByteArray();
    }

    private static Seeds.Outcome inWords(VarwrightException refused) {
        refused.problems().forEach(problem -> {
            assertTrue(problem.print().length() > 20, problem.print());
            assertFalse(problem.print().contains("Exception"), problem.print());
        });
        return Seeds.Outcome.REFUSED;
    }

    @Test
    void photographs() throws IOException {
        List<byte[]> good = List.of(
                picture("png", BufferedImage.TYPE_INT_RGB),
                picture("jpg", BufferedImage.TYPE_INT_RGB),
                picture("png", BufferedImage.TYPE_INT_ARGB),
                picture("jpg", BufferedImage.TYPE_BYTE_GRAY),
                picture("png", BufferedImage.TYPE_USHORT_GRAY));
        Seeds.hold("photographs", 400, random -> switch (Photo.read(damaged(random, Mutation.pick(random, good)))) {
                    case PhotoReading.Shown shown -> {
                        BufferedImage again = ImageIO.read(new ByteArrayInputStream(shown.jpeg()));
                        assertEquals(shown.width(), again.getWidth());
                        assertEquals(shown.height(), again.getHeight());
                        yield Seeds.Outcome.TAKEN;
                    }
                    case PhotoReading.NotShown not -> {
                        assertTrue(not.reason().length() > 8 && !not.reason().contains("Exception"), not.reason());
                        yield Seeds.Outcome.REFUSED;
                    }
                })
                .requireBoth(0.05);
    }

    /** Most of a picture's bytes are its pixels; half of the hits go into the head, where sizes and tables stand. */
    private static byte[] damaged(Random random, byte[] good) {
        if (random.nextBoolean()) {
            return Mutation.bytes(random, good);
        }
        int head = Math.min(good.length, 200);
        byte[] hit = Mutation.bytes(random, Arrays.copyOf(good, head));
        byte[] whole = Arrays.copyOf(hit, hit.length + good.length - head);
        System.arraycopy(good, head, whole, hit.length, good.length - head);
        return whole;
    }

    private static byte[] picture(String kind, int type) throws IOException {
        BufferedImage picture = new BufferedImage(61, 43, type);
        for (int x = 0; x < 61; x++) {
            for (int y = 0; y < 43; y++) {
                picture.setRGB(x, y, 0xFF000000 | ((x * 4) << 16) | ((y * 5) << 8) | ((x * y) & 0xFF));
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertTrue(ImageIO.write(picture, kind, out));
        return out.toByteArray();
    }
}
