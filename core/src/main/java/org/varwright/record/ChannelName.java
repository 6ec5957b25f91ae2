package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;

/**
 * What a channel's name, phase and component say.
 *
 * @param phase {@code A}, {@code B}, {@code C}, {@code AB}, {@code BC}, {@code CA}, {@code N}; empty where nothing is said
 * @param stages that are named
 * @param isMain whether a word stands for the whole bank or its feeder
 * @param isUnbalance whether a word stands for an unbalance
 */
record ChannelName(Optional<String> phase, List<String> stages, boolean isMain, boolean isUnbalance) {
    private static final Set<String> MAIN = Set.of("main", "total", "feeder", "incomer", "bank", "sum");
    private static final Set<String> UNBALANCE = Set.of(
            "unbalance", "unbal", "unb", "imbalance", "neutral", "neut", "bridge", "diff", "differential", "star");

    /** A quantity letter, then a phase: IA, VAN, UL1, VAB, I_A, 3I0 … */
    private static final Pattern NAMED =
            Pattern.compile("(?:3?[iuve])_?(l?[123]|[abcn]|[rst]|ab|bc|ca|an|bn|cn|l12|l23|l31|rs|st|tr|0|g|ng)");

    private static final Pattern NUMBERED = Pattern.compile(".*?([0-9]+)");

    ChannelName {
        stages = List.copyOf(stages);
    }

    static ChannelName of(Channel channel, Bank bank) {
        String written = (channel.name() + " " + channel.component()).toLowerCase(Locale.ROOT);
        List<String> words = words(written);
        boolean unbalance = words.stream().anyMatch(UNBALANCE::contains);
        Optional<String> phase = standard(channel.phase().strip().toLowerCase(Locale.ROOT))
                .or(() -> ofWords(words))
                .or(() -> unbalance ? Optional.of("N") : Optional.empty());
        return new ChannelName(
                phase, stages(written, words, bank), words.stream().anyMatch(MAIN::contains), unbalance);
    }

    private static List<String> words(String written) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        for (char c : (written + " ").toCharArray()) {
            if (Character.isLetterOrDigit(c) || c == '_') {
                word.append(c);
            } else if (!word.isEmpty()) {
                words.add(word.toString());
                word.setLength(0);
            }
        }
        return words;
    }

    private static Optional<String> ofWords(List<String> words) {
        for (String word : words) {
            Matcher matcher = NAMED.matcher(word);
            if (matcher.matches()) {
                return standard(matcher.group(1));
            }
        }
        for (String word : words) {
            if (word.length() == 1 || word.matches("l[123]|ab|bc|ca")) {
                Optional<String> phase = standard(word);
                if (phase.isPresent()) {
                    return phase;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<String> standard(String word) {
        return switch (word) {
            case "a", "l1", "r", "an", "1" -> Optional.of("A");
            case "b", "l2", "s", "bn", "2" -> Optional.of("B");
            case "c", "l3", "t", "cn", "3" -> Optional.of("C");
            case "ab", "l12", "rs" -> Optional.of("AB");
            case "bc", "l23", "st" -> Optional.of("BC");
            case "ca", "l31", "tr" -> Optional.of("CA");
            case "n", "g", "0", "ng" -> Optional.of("N");
            default -> Optional.empty();
        };
    }

    private static List<String> stages(String written, List<String> words, Bank bank) {
        List<String> named = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            boolean found = holds(written, stage.name())
                    || stage.label().filter(l -> holds(written, l)).isPresent()
                    || stage.switchName().filter(s -> holds(written, s)).isPresent()
                    || isNumbered(stage.name(), words);
            if (found) {
                named.add(stage.name());
            }
        }
        return named;
    }

    /** Whether letters and digits of a name stand in a text together, not as part of a longer number or word. */
    private static boolean holds(String written, String name) {
        String plain = plain(name);
        if (plain.length() < 2) {
            return false;
        }
        String text = plain(written);
        int at = text.indexOf(plain);
        while (at >= 0) {
            int end = at + plain.length();
            boolean cut = end < text.length()
                    && Character.isDigit(text.charAt(end))
                    && Character.isDigit(plain.charAt(plain.length() - 1));
            if (!cut) {
                return true;
            }
            at = text.indexOf(plain, at + 1);
        }
        return false;
    }

    /** {@code S3}, {@code ST3}, {@code STG3} for a stage whose name ends in 3. */
    private static boolean isNumbered(String stage, List<String> words) {
        Matcher matcher = NUMBERED.matcher(stage);
        if (!matcher.matches()) {
            return false;
        }
        String number = matcher.group(1);
        return words.stream()
                .anyMatch(w -> List.of("s" + number, "st" + number, "stg" + number, "step" + number)
                        .contains(w));
    }

    private static String plain(String text) {
        StringBuilder plain = new StringBuilder();
        for (char c : text.toLowerCase(Locale.ROOT).toCharArray()) {
            if (Character.isLetterOrDigit(c)) {
                plain.append(c);
            }
        }
        return plain.toString();
    }
}
