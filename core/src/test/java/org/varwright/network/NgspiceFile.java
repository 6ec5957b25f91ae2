package org.varwright.network;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.varwright.quantity.Complex;

/** What ngspice writes with {@code set filetype=binary} after small-signal analyses at one frequency: all digits, and quicker than printing. */
final class NgspiceFile {
    private NgspiceFile() {}

    /** Of each analysis the values by name: a header in text and one row of complex numbers in binary. */
    static List<Map<String, Complex>> read(byte[] file) {
        List<Map<String, Complex>> analyses = new ArrayList<>();
        ByteBuffer bytes = ByteBuffer.wrap(file).order(ByteOrder.nativeOrder());
        while (bytes.hasRemaining()) {
            List<String> names = new ArrayList<>();
            boolean isList = false;
            for (String line = line(bytes); !line.equals("Binary:"); line = line(bytes)) {
                if (isList) {
                    names.add(line.strip().split("\\s+", -1)[1]);
                }
                isList |= line.startsWith("Variables:");
            }
            Map<String, Complex> values = new HashMap<>();
            for (String name : names) {
                values.put(name, new Complex(bytes.getDouble(), bytes.getDouble()));
            }
            analyses.add(values);
        }
        return analyses;
    }

    private static String line(ByteBuffer bytes) {
        StringBuilder line = new StringBuilder();
        for (char c = (char) bytes.get(); c != '\n'; c = (char) bytes.get()) {
            line.append(c);
        }
        return line.toString();
    }
}
