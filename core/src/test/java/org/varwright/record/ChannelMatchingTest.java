package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** REC-11: matched by name, unit, size and physics; asked for where that is not clear. */
class ChannelMatchingTest {
    private static final Bank BANK = RecordBanks.twoStages("400 MVA");
    private static final double ONE = 27.78;
    private static final double TWO = 2.0 * ONE;

    private static ChannelMatching match(Synthetic record, String... map) {
        return RecordStudy.of(record.input(), BANK, List.of(map)).matching().orElseThrow();
    }

    private static String role(ChannelMatching matching, String channel) {
        return matching.assignments().stream()
                .filter(a -> a.channel().name().equals(channel))
                .map(a -> a.role().text())
                .findFirst()
                .orElse("-");
    }

    private static Synthetic record() {
        return new Synthetic(3840.0, 0.3).bus();
    }

    @Test
    void namesThatSayEverything() {
        Synthetic record = record().primary("IA stage 1", "A", Synthetic.leads(ONE, 0))
                .primary("I_B ST2", "kA", Synthetic.leads(TWO, 1))
                .primary("VN stage 2", "V", t -> 0.0);
        ChannelMatching matching = match(record);
        assertInstanceOf(ChannelMatching.Matched.class, matching, matching.toString());
        assertEquals("bus B", role(matching, "VB"));
        assertEquals("stage 1/A", role(matching, "IA stage 1"));
        assertEquals("stage 2/B", role(matching, "I_B ST2"));
        assertEquals("stage 2 neutral-voltage", role(matching, "VN stage 2"));
    }

    @Test
    void sizeCompletesANameWhereOnlyOnePlaceHasIt() {
        ChannelMatching matching = match(record().primary("IC", "A", Synthetic.leads(TWO, 2)));
        assertEquals("stage 2/C", role(matching, "IC"));
    }

    @Test
    void aCurrentOfNoPlaceIsAskedFor() {
        ChannelMatching matching = match(record().primary("IA", "A", Synthetic.leads(40.0, 0)));
        ChannelMatching.Unclear unclear = assertInstanceOf(ChannelMatching.Unclear.class, matching);
        assertEquals("IA", unclear.questions().getFirst().channels().getFirst().name());
        assertTrue(unclear.questions().getFirst().choices().contains("stage 1/A"));
        assertEquals(
                "stage 1/A", role(match(record().primary("IA", "A", Synthetic.leads(ONE, 0)), "IA=stage 1/A"), "IA"));
    }

    @Test
    void aSensorOfTwoIsAskedFor() {
        ChannelMatching matching = match(record().primary("VN", "V", t -> 0.0));
        ChannelMatching.Unclear unclear = assertInstanceOf(ChannelMatching.Unclear.class, matching);
        assertEquals(
                List.of("stage 1 neutral-voltage", "stage 2 neutral-voltage"),
                unclear.questions().getFirst().choices());
    }

    @Test
    void exchangedVoltagesAreAskedForAndSaidThenTaken() {
        double rms = 7200.0;
        Synthetic record = new Synthetic(3840.0, 0.3)
                .primary("VA", "V", t -> org.varwright.waveform.Waves.wave(rms, 60.0, 0.0, t))
                .primary("VB", "V", t -> org.varwright.waveform.Waves.wave(rms, 60.0, 120.0, t))
                .primary("VC", "V", t -> org.varwright.waveform.Waves.wave(rms, 60.0, -120.0, t));
        ChannelMatching.Unclear unclear = assertInstanceOf(ChannelMatching.Unclear.class, match(record));
        assertTrue(unclear.questions().getFirst().what().contains("A-B-C"));
        ChannelMatching said = match(record, "VB=bus C", "VC=bus B");
        assertInstanceOf(ChannelMatching.Matched.class, said);
        assertEquals("bus C", role(said, "VB"));
    }

    @Test
    void aTurnedPolarityIsPutRightAndSaid() {
        ChannelMatching matching = match(record().primary(
                        "IA stage 1", "A", t -> -Synthetic.leads(ONE, 0).applyAsDouble(t)));
        ChannelMatching.Assignment a = matching.assignments().stream()
                .filter(x -> x.role().text().equals("stage 1/A"))
                .findFirst()
                .orElseThrow();
        assertTrue(a.why().getLast().contains("polarity"), a.why().toString());
        assertEquals(Synthetic.leads(ONE, 0).applyAsDouble(0.01), a.primary().at(0.01), 0.2);
    }

    @Test
    void aCurrentOfAnotherPhaseThanItsNameIsAskedFor() {
        ChannelMatching matching = match(record().primary("IA stage 1", "A", Synthetic.leads(ONE, 1)));
        ChannelMatching.Unclear unclear = assertInstanceOf(ChannelMatching.Unclear.class, matching);
        assertTrue(unclear.questions().getFirst().what().contains("against the voltage of phase A"));
    }

    @Test
    void aSideThatTheRecordDoesntGive() {
        // 1991 has no place for it: a current of the right size is primary, one of another size is asked for
        Channel.Side unknown = new Channel.Side.Unknown();
        assertEquals(
                "stage 1/A",
                role(match(record().add("IA stage 1", "A", unknown, Synthetic.leads(ONE, 0))), "IA stage 1"));
        Synthetic small = record().add("IA stage 1", "A", unknown, Synthetic.leads(ONE / 20.0, 0));
        ChannelMatching.Unclear unclear = assertInstanceOf(ChannelMatching.Unclear.class, match(small));
        assertTrue(unclear.questions().getFirst().what().contains("ratio"));
        ChannelMatching said = match(small, "IA stage 1=stage 1/A@100:5");
        assertEquals(
                Synthetic.leads(ONE, 0).applyAsDouble(0.011),
                said.assignments().getLast().primary().at(0.011),
                0.1);
    }

    @Test
    void twoChannelsInOnePlaceAreAskedFor() {
        Synthetic record =
                record().primary("VA bus", "V", t -> org.varwright.waveform.Waves.wave(7200.0, 60.0, 0.0, t));
        ChannelMatching.Unclear unclear = assertInstanceOf(ChannelMatching.Unclear.class, match(record));
        assertEquals(2, unclear.questions().getFirst().channels().size());
    }

    @Test
    void whatIsTypedWrongIsNamed() {
        Synthetic record = record();
        for (String[] wrong : new String[][] {
            {"VA", "CHANNEL_MAP_SYNTAX"},
            {"VX=bus A", "CHANNEL_MAP_UNKNOWN"},
            {"VA=bus D", "CHANNEL_MAP_ROLE"},
            {"VA=stage 1/A", "CHANNEL_MAP_UNIT"},
            {"VA=bus A@maybe", "CHANNEL_MAP_SIDE"}
        }) {
            VarwrightException e = assertThrows(VarwrightException.class, () -> match(record, wrong[0]), wrong[0]);
            assertEquals(Message.valueOf(wrong[1]), e.problems().getFirst().message(), wrong[0]);
        }
    }
}
