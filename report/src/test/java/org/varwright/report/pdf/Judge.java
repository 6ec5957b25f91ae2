package org.varwright.report.pdf;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.TreeSet;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** veraPDF's verdict on a file. */
public final class Judge {
    private Judge() {}

    /** Every rule that the file breaks, with where. */
    public static List<String> broken(byte[] file, PDFAFlavour flavour) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(file), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
            TreeSet<String> rules = new TreeSet<>();
            for (TestAssertion assertion : result.getTestAssertions()) {
                rules.add(assertion.getRuleId().getClause() + "-"
                        + assertion.getRuleId().getTestNumber() + " " + assertion.getMessage() + " at "
                        + assertion.getLocation().getContext());
            }
            if (!result.isCompliant()) {
                rules.add("not compliant");
            }
            return List.copyOf(rules);
        }
    }
}
