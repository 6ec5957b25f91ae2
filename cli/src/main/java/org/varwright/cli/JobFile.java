package org.varwright.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.concurrent.locks.ReentrantLock;
import org.varwright.disk.DiskTrouble;
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
    private final Planner planner = Planner.keeping();

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
        return locked(channel -> write(channel, log(channel), wish));
    }

    /**
     * Merges lines into the file, which may not be there yet. What it holds stays, also what another process puts behind it meanwhile; it is on disk when this returns.
     *
     * @return all of it
     */
    JobLog merge(JobLog lines) {
        if (!Files.exists(path)) {
            return replacedBy(lines);
        }
        log();
        return locked(channel -> replacedBy(log(channel).merge(lines)));
    }

    private JobLog replacedBy(JobLog log) {
        OutputFile.write(path, log.text().getBytes(StandardCharsets.UTF_8));
        return log;
    }

    /** The log through the channel that holds the lock: the system gives up a process's lock when the process closes the file, opened any other way, too. */
    private JobLog log(FileChannel channel) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(Math.toIntExact(channel.size()));
        while (bytes.hasRemaining() && channel.read(bytes, bytes.position()) > 0) {
            // until all of it is read
        }
        return JobLog.read(path.toString(), new String(bytes.array(), 0, bytes.position(), StandardCharsets.UTF_8));
    }

    private interface Work<T> {
        T with(FileChannel channel) throws IOException;
    }

    private <T> T locked(Work<T> work) {
        ONE_THREAD.lock();
        try {
            while (true) {
                String opened = identity();
                try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
                    channel.lock();
                    // A merge may have put another file in its place while this one waited for the lock.
                    if (opened.equals(identity())) {
                        return work.with(channel);
                    }
                }
            }
        } catch (IOException e) {
            throw unwritable(e);
        } finally {
            ONE_THREAD.unlock();
        }
    }

    private String identity() throws IOException {
        return String.valueOf(
                Files.readAttributes(path, BasicFileAttributes.class).fileKey());
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

    private Job write(FileChannel channel, JobLog log, Wish wish) throws IOException {
        LoggedEvent event = switch (wish.of(Job.of(log, planner))) {
            case Proposal.Refused refused -> throw new VarwrightException(refused.why());
            case Proposal.Accepted accepted -> accepted.event();
        };
        boolean torn = channel.size() > 0 && !endsInNewline(channel);
        String text = (torn ? "\n" : "") + event.line() + "\n";
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        long end = channel.size();
        try {
            for (long at = end; bytes.hasRemaining(); ) {
                at += channel.write(bytes, at);
            }
            channel.force(true);
        } catch (IOException e) {
            // Half an event, never acknowledged, must not stand behind the last whole one.
            channel.truncate(end);
            throw e;
        }
        return Job.of(log.with(event), planner);
    }

    private VarwrightException unwritable(IOException e) {
        return new VarwrightException(Message.FILE_UNWRITABLE, new Place(path.toString(), 0, 0, ""), DiskTrouble.of(e));
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
