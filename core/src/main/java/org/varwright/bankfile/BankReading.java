package org.varwright.bankfile;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/**
 * What came of reading a bank file.
 *
 * @param file name as given
 * @param bank the bank; present when there is no error
 * @param errors in the order of the file
 * @param warnings likewise
 * @param places where each part stands, by its path in IEEE words, such as {@code stages[1].unit}
 */
public record BankReading(
        String file, Optional<Bank> bank, List<Problem> errors, List<Problem> warnings, Map<String, Place> places) {
    public BankReading {
        errors = List.copyOf(errors);
        warnings = List.copyOf(warnings);
        places = Collections.unmodifiableMap(new LinkedHashMap<>(places));
    }

    /** Where the part with this path stands; where it has no place of its own, the nearest part around it. */
    public Place place(String path) {
        return placeIn(places, path, file);
    }

    /**
     * The bank.
     *
     * @throws VarwrightException with every error of the file
     */
    public Bank requireBank() {
        return bank.orElseThrow(() -> new VarwrightException(errors));
    }

    static Place placeIn(Map<String, Place> places, String path, String file) {
        String at = path;
        while (true) {
            Place place = places.get(at);
            if (place != null) {
                return place;
            }
            int cut = Math.max(at.lastIndexOf('.'), at.lastIndexOf('['));
            if (cut < 0) {
                return places.getOrDefault("", new Place(file, 0, 0, path));
            }
            at = at.substring(0, cut);
        }
    }
}
