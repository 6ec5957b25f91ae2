package org.varwright.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.varwright.archive.JobArchive;
import org.varwright.archive.OpenArchive;
import org.varwright.disk.DiskTrouble;
import org.varwright.disk.DurableFile;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Planner;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job import FILE.zip -o FILE}. */
@Command(
        name = "import",
        description = {
            "Takes a job out of a ZIP file. Everything in it is looked at first; where anything is wrong, nothing is written.",
            "Where the target is there already and is the same job, lines are merged: nothing is overwritten."
        })
final class JobImportCommand extends AnswerCommand {
    @Parameters(paramLabel = "ARCHIVE", index = "0", description = "The archive (.zip).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path archiveFile;

    @Option(names = "-o", required = true, paramLabel = "FILE", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path target;

    @Option(
            names = "--attachments",
            paramLabel = "DIR",
            description = "Where attachments go (default: the folder \"attachments\" beside the job).")
    private @Nullable Path folder;

    @Override
    Answer answer() {
        InputFile.require(archiveFile);
        try (OpenArchive archive = OpenArchive.of(archiveFile)) {
            JobLog log = archive.log();
            JobFile file = new JobFile(target);
            if (Files.exists(target)) {
                file.log().merge(log);
            }
            Path attachments = folder == null ? target.resolveSibling("attachments") : folder;
            takeAttachments(archive, attachments);
            JobLog merged = file.merge(log);
            List<String> missing = JobArchive.attachments(merged).stream()
                    .filter(hash -> !Files.exists(attachments.resolve(hash)))
                    .toList();
            missing.forEach(hash -> err().println("varwright: attachment " + hash + " is not in the archive"));
            return JobShowCommand.answer(Job.of(merged, Planner.keeping()));
        }
    }

    /** All of them beside their places first; they are put in place only when every one is what its name says. */
    private static void takeAttachments(OpenArchive archive, Path folder) {
        Map<Path, Path> parts = new LinkedHashMap<>();
        try {
            if (!archive.attachments().isEmpty()) {
                boolean isNew = !Files.exists(folder);
                Files.createDirectories(folder);
                if (isNew) {
                    DurableFile.forceFolder(folder.toAbsolutePath().resolveSibling(""));
                }
                DurableFile.clearLeftovers(folder);
            }
            for (String hash : archive.attachments()) {
                Path part = DurableFile.partOf(folder.resolve(hash));
                parts.put(part, folder.resolve(hash));
                try (FileChannel channel = FileChannel.open(
                                part,
                                StandardOpenOption.CREATE,
                                StandardOpenOption.TRUNCATE_EXISTING,
                                StandardOpenOption.WRITE);
                        OutputStream out = Channels.newOutputStream(channel)) {
                    archive.copy(hash, out);
                    channel.force(true);
                }
            }
            DurableFile.moveAll(parts, folder);
        } catch (UncheckedIOException e) {
            throw unwritable(folder, Objects.requireNonNull(e.getCause()));
        } catch (IOException e) {
            throw unwritable(folder, e);
        } finally {
            drop(parts);
        }
    }

    private static VarwrightException unwritable(Path path, IOException e) {
        return new VarwrightException(Message.FILE_UNWRITABLE, new Place(path.toString(), 0, 0, ""), DiskTrouble.of(e));
    }

    private static void drop(Map<Path, Path> parts) {
        for (Path part : parts.keySet()) {
            try {
                Files.deleteIfExists(part);
            } catch (IOException e) {
                throw unwritable(part, e);
            }
        }
    }
}
