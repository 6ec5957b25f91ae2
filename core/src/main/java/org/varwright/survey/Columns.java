package org.varwright.survey;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Reading;

/**
 * What the columns of a table mean.
 *
 * @param header as written
 * @param words columns of plain text
 * @param quantities columns of values
 * @param units the unit of bare numbers in each column of values
 * @param notices what was assumed
 */
record Columns(
        List<String> header,
        Map<Word, Integer> words,
        Map<Quantity, Integer> quantities,
        Map<Quantity, String> units,
        List<Problem> notices) {
    private static final Pattern BRACKETED = Pattern.compile("(.*?)\\s*[(\\[]\\s*([^)\\]]+?)\\s*[)\\]]\\s*");
    private static final Pattern TRAILING = Pattern.compile("(.*?)(?:\\s+in\\s+|\\s*/\\s*|\\s*,\\s*|[\\s_]+)(\\S+)");

    /** Columns of plain text. */
    enum Word {
        POSITION("position", List.of("position", "pos", "at", "place", "unit position", "location")),
        SERIAL("serial", List.of("serial", "serial number", "serial no", "s/n", "sn", "ser")),
        UNIT("unit", List.of("unit", "unit type", "type")),
        TERMINALS("terminals", List.of("terminals", "between", "terminal")),
        INSTRUMENT("instrument", List.of("instrument", "meter", "instrument no", "measured with")),
        TAKEN("taken", List.of("taken", "date", "time", "when", "date and time", "measured", "taken at")),
        NOTE("note", List.of("note", "notes", "remark", "remarks", "comment", "comments"));

        private final String word;

        @SuppressWarnings("ImmutableEnumChecker") // unmodifiable: List.of
        private final List<String> names;

        Word(String word, List<String> names) {
            this.word = word;
            this.names = names;
        }

        String word() {
            return word;
        }
    }

    static Columns of(String file, Titled table) {
        Map<Word, Integer> words = new EnumMap<>(Word.class);
        Map<Quantity, Integer> quantities = new EnumMap<>(Quantity.class);
        Map<Quantity, String> units = new EnumMap<>(Quantity.class);
        List<Problem> notices = new ArrayList<>();
        List<String> header = table.header();
        Place first = new Place(file, 0, 0, "row " + table.headerRow());
        for (int column = 0; column < header.size(); column++) {
            String written = header.get(column);
            if (written.isEmpty()) {
                continue;
            }
            Optional<Word> word = word(written);
            Optional<Named> named = quantity(written);
            if (word.isPresent()) {
                twice(words.put(word.get(), column), header, written, word.get().word(), first);
            } else if (named.isPresent()) {
                Quantity quantity = named.get().quantity();
                twice(quantities.put(quantity, column), header, written, quantity.word(), first);
                units.put(quantity, named.get().unit().orElse(quantity.bareUnit()));
                if (named.get().unit().isEmpty() && hasBareNumbers(table, column)) {
                    notices.add(Problem.of(Message.TABLE_UNIT_ASSUMED, first, written, quantity.bareUnit()));
                }
            } else {
                notices.add(Problem.of(Message.TABLE_COLUMN_KEPT, first, written));
            }
        }
        return new Columns(header, words, quantities, units, List.copyOf(notices));
    }

    /** Whether a cell names a column of this kind. */
    static boolean is(Word word, String cell) {
        return word(cell).filter(found -> found == word).isPresent();
    }

    /** Whether a cell names a column of values, with or without its unit. */
    static boolean isQuantity(String cell) {
        return word(cell).isEmpty() && quantity(cell).isPresent();
    }

    /** Whether a cell names any column. */
    static boolean isKnown(String cell) {
        return !cell.isBlank() && (word(cell).isPresent() || quantity(cell).isPresent());
    }

    /** Whether a cell is a unit of some column of values, alone or in brackets. */
    static boolean isUnit(String cell) {
        String unit = cell.strip().replaceAll("^[(\\[]\\s*|\\s*[)\\]]$", "");
        for (Quantity quantity : Quantity.values()) {
            if (!unit.isEmpty() && quantity.dimension().parse("1 " + unit) instanceof Reading.Value) {
                return true;
            }
        }
        return false;
    }

    private record Named(Quantity quantity, Optional<String> unit) {}

    private static void twice(@Nullable Integer before, List<String> header, String written, String what, Place place) {
        if (before != null) {
            throw new VarwrightException(Message.TABLE_COLUMN_TWICE, place, header.get(before), written, what);
        }
    }

    private static Optional<Word> word(String written) {
        String name = plain(written);
        for (Word word : Word.values()) {
            if (word.names.contains(name)) {
                return Optional.of(word);
            }
        }
        return Optional.empty();
    }

    /** The quantity of a column name, with the unit that the name carries: {@code capacitance (nF)}, {@code C/µF}, {@code cap_nF}. */
    private static Optional<Named> quantity(String written) {
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isNamed(plain(written))) {
                return Optional.of(new Named(quantity, Optional.empty()));
            }
        }
        for (Pattern pattern : List.of(BRACKETED, TRAILING)) {
            Matcher matcher = pattern.matcher(written.strip());
            if (!matcher.matches()) {
                continue;
            }
            for (Quantity quantity : Quantity.values()) {
                boolean fits = quantity.dimension().parse("1 " + matcher.group(2)) instanceof Reading.Value;
                if (fits && quantity.isNamed(plain(matcher.group(1)))) {
                    return Optional.of(new Named(quantity, Optional.of(matcher.group(2))));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean hasBareNumbers(Titled table, int column) {
        return table.rows().stream().anyMatch(row -> row.cell(column).matches("[<>]?\\s*[+\\-]?[0-9.,' ]*[0-9]"));
    }

    private static String plain(String written) {
        return written.strip()
                .toLowerCase(Locale.ROOT)
                .replace('_', ' ')
                .replace(".", "")
                .replaceAll("\\s+", " ");
    }

    OptionalInt column(Word word) {
        Integer column = words.get(word);
        return column == null ? OptionalInt.empty() : OptionalInt.of(column);
    }

    /** The text of a row in a column of words; empty where there is none. */
    Optional<String> text(CellTable.Row row, Word word) {
        OptionalInt column = column(word);
        String cell = column.isPresent() ? row.cell(column.getAsInt()) : "";
        return cell.isEmpty() ? Optional.empty() : Optional.of(cell);
    }

    /** Cells of the columns that are not known, by the column's name. */
    Map<String, String> others(CellTable.Row row) {
        Map<String, String> others = new LinkedHashMap<>();
        for (int column = 0; column < header.size(); column++) {
            if (!words.containsValue(column)
                    && !quantities.containsValue(column)
                    && !row.cell(column).isEmpty()) {
                others.put(
                        header.get(column).isEmpty() ? "column " + (column + 1) : header.get(column), row.cell(column));
            }
        }
        return others;
    }

    /** Each known column as it was understood, such as {@code Cap. (nF) → capacitance in nF}. */
    List<String> understood() {
        List<String> lines = new ArrayList<>();
        for (int column = 0; column < header.size(); column++) {
            int at = column;
            for (Map.Entry<Word, Integer> entry : words.entrySet()) {
                if (entry.getValue() == at) {
                    lines.add("\"" + header.get(at) + "\" is " + entry.getKey().word());
                }
            }
            for (Map.Entry<Quantity, Integer> entry : quantities.entrySet()) {
                if (entry.getValue() == at) {
                    lines.add("\"" + header.get(at) + "\" is " + entry.getKey().word() + " in " + unit(entry.getKey()));
                }
            }
        }
        return List.copyOf(lines);
    }

    String unit(Quantity quantity) {
        return units.getOrDefault(quantity, quantity.bareUnit());
    }

    /** The columns by name, for messages. */
    String listed() {
        return header.stream()
                .map(name -> "\"" + name + "\"")
                .reduce((a, b) -> a + ", " + b)
                .orElse("none");
    }

    /** How numbers are written in the columns of values: what most cells show; else a comma only where no cell could be anything else. */
    Decimals decimals(Titled table) {
        int commas = 0;
        int points = 0;
        boolean anyComma = false;
        for (CellTable.Row row : table.rows()) {
            for (int column : quantities.values()) {
                if (row.numbers().contains(column)) {
                    continue;
                }
                Optional<Cell.Decimal> shown = Cell.decimalOf(row.cell(column));
                commas += shown.filter(d -> d == Cell.Decimal.COMMA).isPresent() ? 1 : 0;
                points += shown.filter(d -> d == Cell.Decimal.POINT).isPresent() ? 1 : 0;
                anyComma |= row.cell(column).matches(".*[0-9],[0-9].*");
            }
        }
        boolean decided = commas + points > 0;
        boolean comma = decided ? commas > points : table.delimiter() != ',' && anyComma;
        return new Decimals(comma ? Cell.Decimal.COMMA : Cell.Decimal.POINT, decided, commas > 0 || comma);
    }

    /**
     * How the numbers of a table are written.
     *
     * @param decimal the decimal mark
     * @param decided whether some cell leaves no doubt
     * @param anyComma whether some cell was read with a decimal comma
     */
    record Decimals(Cell.Decimal decimal, boolean decided, boolean anyComma) {}
}
