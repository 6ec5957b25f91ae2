package org.varwright.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.locks.ReentrantLock;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.LoggedEvent;
import org.varwright.job.Planner;
import org.varwright.job.Proposal;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** A job in a file, one event a line. Lines are only ever put behind the last one. */
final class JobFile {
    /** A file lock keeps other processes out; this keeps the threads of one process from asking for it at the same time. */
    private static final ReentrantLock ONE_THREAD = new ReentrantLock();

    private final Path path;

    JobFile(Path path) {
        this.path = path;
    }

    /** The log in the file. */
    JobLog log() {
        return JobLog.read(path.toString(), new String(InputFile.read(path), StandardCharsets.UTF_8));
    }

    /** What is proposed for a job. */
    interface Wish {
        Proposal of(Job job);
    }

    /**
     * Writes one event behind the last, under a lock on the file, so that two processes can't write the same number twice. It is on disk when this returns.
     *
     * @throws VarwrightException with every reason where the rules refuse it; then nothing is written
     */
    Job append(Wish wish) {
        log();
        ONE_THREAD.lock();
        try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            channel.lock();
            return write(channel, log(), wish);
        } catch (IOException e) {
            throw unwritable(e);
        } finally {
            ONE_THREAD.unlock();
        }
    }

    /**
     * Begins the file with the first event of a job.
     *
     * @throws VarwrightException {@code JOB_FILE_EXISTS} where there is such a file
     */
    Job begin(String job, Wish wish) {
        Place place = new Place(path.toString(), 0, 0, "");
        try (FileChannel channel = FileChannel.open(
                path, StandardOpenOption.CREATE_NEW, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            return write(channel, JobLog.empty(job), wish);
        } catch (FileAlreadyExistsException e) {
            throw new VarwrightException(Message.JOB_FILE_EXISTS, place);
        } catch (IOException e) {
            throw unwritable(e);
        } finally {
            deleteIfEmpty();
        }
    }

    private static Job write(FileChannel channel, JobLog log, Wish wish) throws IOException {
        LoggedEvent event = switch (wish.of(Job.of(log, Planner.ANEW))) {
            case Proposal.Refused refused -> throw new VarwrightException(refused.why());
            case Proposal.Accepted accepted -> accepted.event();
        };
        boolean torn = channel.size() > 0 && !endsInNewline(channel);
        String text = (torn ? "\n" : "") + event.line() + "\n";
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        long at = channel.size();
        while (bytes.hasRemaining()) {
            at += channel.write(bytes, at);
        }
        channel.force(true);
        return Job.of(log.with(event), Planner.ANEW);
    }

    private VarwrightException unwritable(IOException e) {
        return new VarwrightException(
                Message.FILE_UNWRITABLE, new Place(path.toString(), 0, 0, ""), String.valueOf(e.getMessage()));
    }

    /** A job that was refused at its first event leaves no empty file behind. */
    private void deleteIfEmpty() {
        try {
            if (Files.exists(path) && Files.size(path) == 0) {
                Files.delete(path);
            }
        } catch (IOException e) {
            throw unwritable(e);
        }
    }

    private static boolean endsInNewline(FileChannel channel) throws IOException {
        ByteBuffer last = ByteBuffer.allocate(1);
        channel.read(last, channel.size() - 1);
        return last.get(0) == '\n';
    }
}
