package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.json.Json;
import org.varwright.plot.Width;
import org.varwright.waveform.Signal;
import org.varwright.waveform.TimeBase;
import org.varwright.waveform.Waves;

/** Whatever stands in a record, it is studied to an end, and the answer is text and JSON. A failure prints its seed. */
class AnyRecordLawTest {
    private static final List<Bank> BANKS = List.of(
            RecordBanks.twoStages("400 MVA"),
            RecordBanks.fourGroups(),
            RecordBanks.doubleWye(),
            RecordBanks.grounded());
    private static final List<String> NAMES = List.of(
            "VA",
            "VB",
            "VC",
            "VAB",
            "IA",
            "IB stage 1",
            "IC S2",
            "VN",
            "IN",
            "VA stage 2",
            "VC D",
            "",
            "3I0",
            "\u00ff",
            "IA");

    @Test
    void anyRecordIsStudiedToAnEnd() {
        for (long seed = 1; seed <= 120; seed++) {
            Random random = new Random(seed);
            Bank bank = BANKS.get(random.nextInt(BANKS.size()));
            RecordInput input = input(random);
            try {
                RecordStudy study = RecordStudy.of(input, bank, List.of());
                String json = RecordStudyJson.of(study).print();
                assertEquals(json, Json.parse(json).print(), "seed " + seed);
                assertFalse(RecordStudyText.of(study).isBlank(), "seed " + seed);
                RecordPicture.svg(study, Width.PAGE);
                RecordView.at(study, random.nextDouble()).print();
                RecordStudyJson.of(RecordStudy.of(input)).print();
            } catch (RuntimeException e) {
                fail("seed " + seed, e);
            }
        }
    }

    private static RecordInput input(Random random) {
        int samples = random.nextInt(10) == 0 ? random.nextInt(40) : 200 + random.nextInt(1500);
        double[] seconds = new double[samples];
        double step = Math.pow(10.0, -2.0 - 2.5 * random.nextDouble());
        for (int i = 1; i < samples; i++) {
            boolean odd = random.nextInt(400) == 0;
            seconds[i] = seconds[i - 1] + (odd ? step * 10.0 * random.nextDouble() : step);
        }
        TimeBase base = TimeBase.of(seconds);
        List<Channel> channels = new ArrayList<>();
        int count = random.nextInt(9);
        for (int c = 0; c < count; c++) {
            String name = NAMES.get(random.nextInt(NAMES.size()));
            Channel.Quantity quantity = random.nextInt(8) == 0
                    ? Channel.Quantity.OTHER
                    : name.contains("I") ? Channel.Quantity.AMPERES : Channel.Quantity.VOLTS;
            Channel.Side side = switch (random.nextInt(3)) {
                case 0 -> new Channel.Side.Primary();
                case 1 -> new Channel.Side.Secondary(60.0);
                default -> new Channel.Side.Unknown();
            };
            double[] values = values(random, seconds, quantity == Channel.Quantity.VOLTS ? 7200.0 : 50.0);
            channels.add(new Channel(c + 1, name, "", "", "", quantity, side, Signal.of(base, values)));
        }
        return new RecordInput(
                "", "", random.nextInt(4) == 0 ? 0.0 : 60.0, base, channels, List.of(), OptionalDouble.empty());
    }

    private static double[] values(Random random, double[] seconds, double size) {
        double degrees = 120.0 * random.nextInt(3) + (random.nextBoolean() ? 90.0 : 0.0);
        double stops = random.nextBoolean() ? 0.3 * random.nextDouble() : 1e9;
        double starts = random.nextInt(4) == 0 ? 0.2 * random.nextDouble() : -1.0;
        int kind = random.nextInt(7);
        double[] values = new double[seconds.length];
        for (int i = 0; i < values.length; i++) {
            double t = seconds[i];
            double wave = t > starts && t < stops ? Waves.wave(size, 60.0, degrees, t) : 0.0;
            values[i] = switch (kind) {
                case 0 -> 0.0;
                case 1 -> size;
                case 2 -> size * random.nextGaussian();
                case 3 -> Double.NaN;
                case 4 -> random.nextInt(5) == 0 ? Double.NaN : wave;
                case 5 -> wave * 1e150;
                default -> wave + 0.01 * size * random.nextGaussian();
            };
        }
        return values;
    }
}
