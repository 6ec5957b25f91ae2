package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Tables damaged cell by cell: every row is used or reported by its number, and nothing is dropped in silence. */
class MutatedTableLawTest {
    private static final Bank BANK = new BankSketch()
            .stage(
                    "s",
                    Connection.WYE_UNGROUNDED,
                    new LegLayout(1, 2, 2),
                    BankSketch.type("U300", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, false, Optional.empty()))
            .build();

    private static final List<String> CELLS = List.of(
            "",
            " ",
            "-",
            "n/a",
            "OL",
            ">200",
            "<0.01",
            "12,71",
            "12.71",
            "1.271,0",
            "1,271.0",
            "12,710",
            "12.71 uF",
            "12710 nF",
            "12.71 kV",
            "-3",
            "about 12",
            "1e400",
            "NaN",
            "=A1*2",
            "#DIV/0!",
            "\"",
            "s/A",
            "s/A/g1",
            "s/A/g1u1",
            "s/A/g1u1+u2",
            "s/Z/g9",
            "2026-05-11",
            "TRUE",
            "12.71\u00a0µF",
            "position",
            "𝟏𝟐",
            "'12.71",
            "+cmd|' /C calc'!A0");

    @Test
    void everyRowIsUsedOrReported() {
        int used = 0;
        int reported = 0;
        int refused = 0;
        for (long seed = 1; seed <= 1500; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<CellTable.Row> rows = rows(random);
            CellTable table = random.nextBoolean()
                    ? CellTable.ofSheet("r.xlsx", "one", rows, List.of())
                    : new CellTable("r.csv", Optional.empty(), ';', rows, List.of());
            Readings readings;
            try {
                readings = ReadingsFile.read(BANK, table);
            } catch (VarwrightException e) {
                refused++;
                assertTrue(!e.problems().isEmpty());
                continue;
            }
            Set<Integer> accounted = new TreeSet<>();
            readings.rows().forEach(row -> accounted.add(row.row()));
            readings.spots().forEach(row -> accounted.add(row.row()));
            used += accounted.size();
            for (Problem problem : readings.problems()) {
                reported++;
                assertTrue(!problem.print().isEmpty());
                accounted.add(row(problem));
            }
            readings.notices().stream()
                    .filter(problem -> problem.message() == Message.TABLE_ROW_ABOVE)
                    .forEach(problem -> accounted.add(row(problem)));
            Set<Integer> below = new TreeSet<>();
            int header = headerRow(rows);
            rows.stream()
                    .filter(row -> !row.isEmpty() && row.number() != header)
                    .forEach(row -> below.add(row.number()));
            // a second row of column names belongs to the header
            below.removeIf(number -> number == header + 1 && !accounted.contains(number));
            accounted.remove(header);
            below.removeAll(accounted);
            assertEquals(Set.of(), below, "seed " + seed + " dropped rows");
            Survey survey = Survey.of(BANK, readings, SurveySettings.of(BANK.standard(), 0.01));
            assertEquals(12, survey.units().size(), "seed " + seed);
            SurveyText.of(survey);
            SurveyJson.of(survey).print();
        }
        assertTrue(used > 1000 && reported > 1000 && refused > 10, used + ", " + reported + ", " + refused);
    }

    private static int row(Problem problem) {
        return Integer.parseInt(problem.place().path().replaceFirst("^row ", ""));
    }

    /** The first row that names the position column. */
    private static int headerRow(List<CellTable.Row> rows) {
        return rows.stream()
                .filter(row -> row.cells().stream().anyMatch(cell -> cell.equals("position")))
                .mapToInt(CellTable.Row::number)
                .findFirst()
                .orElse(-1);
    }

    private static List<CellTable.Row> rows(SplittableRandom random) {
        List<CellTable.Row> rows = new ArrayList<>();
        int number = 1;
        for (int title = random.nextInt(3); title > 0; title--) {
            rows.add(CellTable.Row.of(number++, List.of("Bank survey, May")));
        }
        List<String> names = new ArrayList<>(
                List.of("position", "capacitance (µF)", "resistance", "terminals", "temperature", "note"));
        if (random.nextInt(15) == 0) {
            names.set(
                    random.nextInt(names.size()),
                    CELLS.get(random.nextInt(CELLS.size())).strip());
        }
        rows.add(CellTable.Row.of(number++, names));
        for (int i = random.nextInt(1, 6); i > 0; i--) {
            List<String> cells =
                    new ArrayList<>(List.of("s/A/g" + random.nextInt(1, 3) + "u1", "12.71", "4.1", "", "20", "ok"));
            for (int damage = random.nextInt(3); damage > 0; damage--) {
                cells.set(
                        random.nextInt(cells.size()),
                        CELLS.get(random.nextInt(CELLS.size())).strip());
            }
            if (random.nextInt(12) == 0) {
                cells.add(CELLS.get(random.nextInt(CELLS.size())).strip());
            }
            rows.add(CellTable.Row.of(number++, cells));
            number += random.nextInt(8) == 0 ? 1 : 0;
        }
        return rows;
    }
}
