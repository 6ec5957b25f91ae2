package org.varwright.cli;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The command line in a process of its own: limits of the operating system can be laid on it, its output can be shut, it can be killed. */
final class ChildProcess {
    private final List<String> before;
    private final Path err;

    private ChildProcess(Path folder, List<String> before) throws IOException {
        this.before = before;
        err = Files.createTempFile(folder, "err-", "");
    }

    /** Without limits; notes of its errors lie in the folder. */
    static ChildProcess plain(Path folder) throws IOException {
        return new ChildProcess(folder, List.of());
    }

    /** No file may grow beyond that: the kernel ends its write in the middle, as on a full disk. */
    static ChildProcess withRoomFor(Path folder, long bytes) throws IOException {
        return new ChildProcess(folder, List.of("prlimit", "--fsize=" + bytes, "--"));
    }

    /** Permissions hold for it, also where it is started by the superuser. */
    static ChildProcess withoutOverride(Path folder) throws IOException {
        return new ChildProcess(
                folder,
                "root".equals(System.getProperty("user.name"))
                        ? List.of(
                                "setpriv",
                                "--bounding-set=-dac_override,-dac_read_search",
                                "--inh-caps=-dac_override,-dac_read_search",
                                "--")
                        : List.of());
    }

    /** Started; its output goes nowhere. */
    Process start(String... args) throws IOException {
        return start(new File("/dev/null"), args);
    }

    Process start(File out, String... args) throws IOException {
        return builder(args).redirectOutput(out).start();
    }

    /** Runs it to its end; its output goes to that file. */
    Session run(File out, String... args) throws Exception {
        return ended(start(out, args));
    }

    Session run(String... args) throws Exception {
        return run(new File("/dev/null"), args);
    }

    /** Runs it with words of a shell around it: {@code $@} stands for the command. */
    Session inShell(String script, String... args) throws Exception {
        return ended(inBackground(script, args));
    }

    /** The same, and does not wait. */
    Process inBackground(String script, String... args) throws IOException {
        List<String> command = new ArrayList<>(List.of("bash", "-c", script, "bash"));
        command.addAll(builder(args).command());
        return new ProcessBuilder(command)
                .redirectError(err.toFile())
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private Session ended(Process process) throws Exception {
        int code = process.waitFor();
        return new Session(code, "", Files.readString(err, StandardCharsets.UTF_8));
    }

    private ProcessBuilder builder(String... args) {
        List<String> command = new ArrayList<>(before);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        command.addAll(List.of(args));
        return new ProcessBuilder(command).redirectError(err.toFile());
    }
}
