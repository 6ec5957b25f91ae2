package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;
import org.varwright.resonance.BankText;

/** What is asked for by name is held against the nameplates all the same: a wish never puts a unit where it must not stand (FIT-1). */
class RequestTest {
    private static final Bank BANK = BankText.bank(BankText.system("12.47", "200", ""), """
            unit-types:
              - {name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
              - {name: V, rating: 100 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages:
              - {name: one, connection: wye-ungrounded, groups: 1, units: 2, unit: U}
              - {name: two, connection: wye-ungrounded, groups: 1, units: 2, unit: V}
            """);

    private static Spare spare(String serial, int type, double perNameplate) {
        return new Spare(
                serial,
                BANK.unitTypes().get(type),
                OptionalDouble.of(perNameplate * BANK.unitTypes().get(type).capacitanceFarads()),
                Optional.empty());
    }

    private static Request resolve(List<String> keep, FitOptions.Exchange... swaps) {
        List<Fitted> units = new ArrayList<>();
        for (UnitPosition at : BANK.positions()) {
            double farads = 1.05 * BANK.stage(at.stage()).orElseThrow().unit().capacitanceFarads();
            Fitted.Role role = switch (at.name()) {
                case "one/A/u1" -> Fitted.Role.CONDEMNED;
                case "one/B/u1" -> Fitted.Role.EMPTY;
                case "one/C/u2" -> Fitted.Role.IMMOVABLE;
                default -> Fitted.Role.KEPT;
            };
            units.add(FitBanks.fitted(at, farads, role));
        }
        return Request.resolve(FitBanks.input(
                BANK,
                units,
                List.of(spare("GOOD", 0, 1.05), spare("SMALL", 1, 1.05), spare("SHORTED", 0, 1.33)),
                new FitOptions(keep, List.of(swaps), List.of(), FitOptions.Aim.FEWEST_LIFTS, 2)));
    }

    private static void refused(Message message, FitOptions.Exchange... swaps) {
        assertEquals(
                message,
                assertThrows(VarwrightException.class, () -> resolve(List.of(), swaps))
                        .problems()
                        .getFirst()
                        .message());
    }

    private static FitOptions.Exchange swap(String first, String second) {
        return new FitOptions.Exchange(first, second);
    }

    @Test
    void aWishIsHeldAgainstTheNameplates() {
        refused(Message.FIT_SWAP_UNFIT, swap("one/A/u1", "SMALL"));
        refused(Message.FIT_SWAP_UNFIT, swap("one/A/u1", "SHORTED"));
        refused(Message.FIT_SWAP_UNFIT, swap("one/A/u2", "two/A/u1"));
        refused(Message.FIT_SWAP_UNFIT, swap("two/A/u1", "one/A/u2"));
        refused(Message.FIT_SWAP_CONDEMNED, swap("one/A/u1", "one/A/u2"));
        refused(Message.FIT_SWAP_CONDEMNED, swap("one/A/u2", "one/A/u1"));
        refused(Message.FIT_SWAP_CONDEMNED, swap("one/A/u2", "one/B/u1"));
        refused(Message.FIT_SWAP_TWICE, swap("one/A/u2", "one/B/u2"), swap("one/A/u2", "one/C/u1"));
        refused(Message.FIT_SWAP_TWICE, swap("one/A/u2", "one/B/u2"), swap("one/C/u1", "one/B/u2"));
        refused(Message.FIT_SWAP_TWICE, swap("one/A/u1", "GOOD"), swap("one/B/u1", "GOOD"));
    }

    @Test
    void whatAWishLeaves() {
        Request request = resolve(List.of("one/B/u2"), swap("one/A/u1", "GOOD"), swap("one/A/u2", "one/C/u1"));
        assertEquals(
                List.of("one/B/u1"),
                request.open().stream().map(UnitPosition::name).toList(),
                "the condemned unit's place has its spare, the empty one is left");
        assertEquals(
                List.of("one/A/u1", "one/A/u2", "one/B/u2", "one/C/u1", "one/C/u2"),
                request.fixed().stream().map(UnitPosition::name).sorted().toList());
        assertEquals(
                List.of("SMALL", "SHORTED"),
                request.spares().stream().map(Spare::serial).toList());
        UnitPosition a2 = BANK.position("one/A/u2").orElseThrow();
        assertEquals(
                "N-one/C/u1", ((Content.InPlace) request.start().at(a2)).unit().name());
        assertEquals(
                "N-one/A/u2",
                ((Content.InPlace) request.asFound().at(a2)).unit().name());
    }

    /** A spare is taken by what it measures: the nameplate's 0 to +10 %, ends included. */
    @Test
    void measuredCapacitanceOfASpare() {
        double[] perNameplate = {0.9999, 1.0, 1.1, 1.1001};
        for (int i = 0; i < perNameplate.length; i++) {
            assertEquals(
                    i == 1 || i == 2,
                    Compatibility.reason(BANK, BANK.stages().getFirst(), spare("S", 0, perNameplate[i]))
                            .isEmpty(),
                    "" + perNameplate[i]);
        }
        Spare unmeasured = new Spare("S", BANK.unitTypes().getFirst(), OptionalDouble.empty(), Optional.empty());
        assertEquals(Optional.empty(), Compatibility.reason(BANK, BANK.stages().getFirst(), unmeasured));
    }
}
