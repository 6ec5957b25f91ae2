package org.varwright.comtrade;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** A small record of 1999 without a fault, to be spoiled one thing at a time. */
final class PlainRecord {
    /** Four samples at 1 kHz: a secondary current 600:5, a voltage, one state. */
    static final String CFG = """
            Plover Hill,REC 1,1999
            3,2A,1D
            1,IA,A,,A,0.5,1,0,-99999,99998,600,5,S
            2,VA,A,,kV,0.001,0,0,-99999,99998,7200,120,P
            1,TRIP,A,52a,0
            60
            1
            1000,4
            09/03/2024,14:05:07.025000
            09/03/2024,14:05:07.027000
            ASCII
            1
            """;

    static final String DAT = "1,0,2,8500,0\n2,1000,4,-8500,0\n3,2000,6,100,1\n4,3000,8,200,1\n";

    private PlainRecord() {}

    /** The same in the edition of 2013, with a clock locked at UTC −5:30. */
    static String cfg2013() {
        return CFG.replace(",1999\n", ",2013\n") + "-5h30,-5h30\n0,0\n";
    }

    /** The same in the form of 1991: no year, no ratio, the month first. */
    static String cfg1991() {
        return CFG.replace(",1999\n", "\n")
                .replace(",600,5,S", "")
                .replace(",7200,120,P", "")
                .replace("1,TRIP,A,52a,0", "1,TRIP,0")
                .replace("ASCII\n1\n", "ASCII\n")
                .replace("09/03/2024", "03/09/95");
    }

    static Recording read(String configuration, String data) {
        return read(configuration, bytes(data));
    }

    static Recording read(String configuration, byte[] data) {
        return RecordReader.read(
                RecordFiles.of(source("a.cfg", bytes(configuration)), source("a.dat", data)), ReadOptions.ALL);
    }

    static Source source(String name, byte[] bytes) {
        return Source.of(name, Bytes.of(bytes));
    }

    static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** What was remarked, each with its place. */
    static List<String> remarks(Recording recording) {
        List<String> said = new ArrayList<>();
        for (Problem remark : recording.remarks()) {
            said.add(remark.message() + " " + remark.place().print());
        }
        return said;
    }

    /** The message and place by which a record is refused; empty where it is read. */
    static String refusal(String configuration, byte[] data) {
        try {
            read(configuration, data);
            return "";
        } catch (VarwrightException e) {
            Problem problem = e.problems().getFirst();
            return problem.message() + " " + problem.place().print();
        }
    }

    static boolean has(Recording recording, Message message) {
        return recording.remarks().stream().anyMatch(r -> r.message() == message);
    }
}
