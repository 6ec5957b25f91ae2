package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.waveform.Signal;
import org.varwright.waveform.TimeBase;

/** What names say: phases in the letters of IEEE and IEC, stages, unbalance. A phase read wrongly sends a person to the wrong leg. */
class ChannelNameTest {
    private static final Bank BANK = RecordBanks.twoStages("400 MVA");

    private static ChannelName of(String name, String phase, String component) {
        return ChannelName.of(
                new Channel(
                        1,
                        name,
                        phase,
                        component,
                        "A",
                        Channel.Quantity.AMPERES,
                        new Channel.Side.Primary(),
                        Signal.of(TimeBase.of(new double[0]), new double[0])),
                BANK);
    }

    @ParameterizedTest
    @CsvSource({
        "IA, A",
        "ib, B",
        "I_C, C",
        "VAN, A",
        "VBN, B",
        "VCN, C",
        "UL1, A",
        "UL2, B",
        "IL3, C",
        "I1, A",
        "I2, B",
        "I3, C",
        "IR, A",
        "IS, B",
        "IT, C",
        "Current A, A",
        "phase B amps, B",
        "L2 current, B",
        "VAB, AB",
        "VBC, BC",
        "VCA, CA",
        "UL12, AB",
        "UL23, BC",
        "UL31, CA",
        "URS, AB",
        "UST, BC",
        "UTR, CA",
        "volts AB, AB",
        "IN, N",
        "IG, N",
        "3I0, N",
        "V0, N",
        "VNG, N",
        "unbalance, N",
        "neutral current, N",
        "bridge diff, N",
        "EA, A",
        "3IB, B"
    })
    void phasesByTheirLetters(String name, String phase) {
        assertEquals(Optional.of(phase), of(name, "", "").phase(), name);
    }

    @ParameterizedTest
    @CsvSource({"current", "IX", "amps total", "D", "''", "IAB1", "frequency"})
    void namesThatSayNoPhase(String name) {
        assertEquals(Optional.empty(), of(name, "", "").phase(), name);
    }

    /** The record's own field for the phase goes before the name. */
    @Test
    void theFieldGoesBeforeTheName() {
        assertEquals(Optional.of("B"), of("IA", " b ", "").phase());
        assertEquals(Optional.of("A"), of("IA", "x", "").phase());
        assertEquals(Optional.of("C"), of("current", "", "L3").phase());
    }

    @ParameterizedTest
    @CsvSource({
        "IA stage 1, stage 1",
        "IA STAGE-2, stage 2",
        "IA stage2, stage 2",
        "IA S1, stage 1",
        "IA ST2, stage 2",
        "IA STG1, stage 1",
        "IA step2, stage 2",
        "IA stage 12, ''",
        "IA stage 21, ''",
        "IA, ''",
        "IA S12, ''",
        "IA 1, ''"
    })
    void stagesByNameOrNumber(String name, String stage) {
        assertEquals(
                stage.isEmpty() ? List.of() : List.of(stage), of(name, "", "").stages(), name);
    }

    @Test
    void bothStagesOrTheWholeBank() {
        assertEquals(
                List.of("stage 1", "stage 2"),
                of("IA stage 1 + stage 2", "", "").stages());
        assertEquals(List.of("stage 2"), of("IA", "", "stage 2").stages());
        assertEquals(true, of("IA main", "", "").isMain());
        assertEquals(true, of("IA bank", "", "").isMain());
        assertEquals(false, of("IA", "", "").isMain());
        assertEquals(true, of("unbalance A", "", "").isUnbalance());
        assertEquals(Optional.of("A"), of("unbalance A", "", "").phase());
        assertEquals(false, of("IA", "", "").isUnbalance());
    }
}
