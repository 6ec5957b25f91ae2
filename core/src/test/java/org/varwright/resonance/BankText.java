package org.varwright.resonance;

import java.nio.charset.StandardCharsets;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;

/** Banks for tests, written as bank files. */
public final class BankText {
    private BankText() {}

    /**
     * A bank with these parts.
     *
     * @param standard and system, such as {@code standard: IEEE\nsystem: {…}}
     * @param rest unit types, stages and more
     */
    public static Bank bank(String standard, String rest) {
        String text = "format: varwright/1\nname: test bank\n" + standard.strip() + "\n" + rest.strip() + "\n";
        return BankFile.read("test", text.getBytes(StandardCharsets.UTF_8)).requireBank();
    }

    /** An IEEE system at 60 Hz. */
    public static String system(String kilovolts, String megavoltAmperes, String more) {
        return "standard: IEEE\nsystem: {voltage: " + kilovolts + " kV, frequency: 60 Hz, short-circuit: "
                + megavoltAmperes + " MVA, grounding: solid" + more + "}";
    }
}
