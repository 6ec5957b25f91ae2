package org.varwright.fuse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.varwright.basis.Source;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * Melting currents of type K and T links, ratings 6 A to 200 A (FUS-1).
 *
 * <p><b>Not in the table.</b> Ratings below 6 A, times other than the three, makers' own speeds: those are "not known" here.
 *
 * <p><b>Source.</b> ANSI C37.42, from memory, unchecked. Each row agrees with the speed ratio that is remembered for it, which is a second number and
 * not a second document.
 */
public final class LinkTable {
    public static final Source SOURCE = Source.unchecked("ANSI C37.42, melting currents of type K and T links");

    /** Rating, series, then least and most amperes at the longest time, 10 s, 0.1 s. */
    private static final String FAST = """
            6   preferred     12   14.4   13.5   20.5    72    86
            8   intermediate  15   18     18     27      97   116
            10  preferred     19.5 23.4   22.5   34     128   154
            12  intermediate  25   30     29.5   44     166   199
            15  preferred     31   37.2   37     55     215   258
            20  intermediate  39   47     48     71     273   328
            25  preferred     50   60     60     90     350   420
            30  intermediate  63   76     77.5  115     447   546
            40  preferred     80   96     98    146     565   680
            50  intermediate 101  121    126    188     719   862
            65  preferred    128  153    159    237     918  1100
            80  intermediate 160  192    205    307    1180  1420
            100 preferred    200  240    258    388    1520  1820
            140 preferred    310  372    430    650    2470  2970
            200 preferred    480  576    760   1150    3880  4650
            """;

    private static final String SLOW = """
            6   preferred     12   14.4   15.3   23     120   144
            8   intermediate  15   18     20.5   31     166   199
            10  preferred     19.5 23.4   26.5   40     224   269
            12  intermediate  25   30     34.5   52     296   355
            15  preferred     31   37.2   44.5   67     388   466
            20  intermediate  39   47     57     85     496   595
            25  preferred     50   60     73.5  109     635   762
            30  intermediate  63   76     93    138     812   975
            40  preferred     80   96    120    178    1040  1240
            50  intermediate 101  121    152    226    1310  1570
            65  preferred    128  153    195    291    1650  1975
            80  intermediate 160  192    248    370    2080  2500
            100 preferred    200  240    319    475    2620  3150
            140 preferred    310  372    520    775    4000  4800
            200 preferred    480  576    850   1275    6250  7470
            """;

    private static final List<Link> ALL = read();

    private LinkTable() {}

    /** Every link, by rating, K before T. */
    public static List<Link> all() {
        return ALL;
    }

    /** Every link of one type, by rating. */
    public static List<Link> of(LinkType type) {
        return ALL.stream().filter(l -> l.type() == type).toList();
    }

    /** The link with this name, such as {@code 40T} or {@code 40 t}; empty where the table has none. */
    public static Optional<Link> named(String name) {
        String plain = name.replace(" ", "").toUpperCase(Locale.ROOT);
        return ALL.stream().filter(l -> l.name().equals(plain)).findFirst();
    }

    /**
     * The link with this name.
     *
     * @throws VarwrightException {@code FUSE_LINK_UNKNOWN} with the ratings that there are
     */
    public static Link require(String name) {
        return named(name)
                .orElseThrow(() -> new VarwrightException(
                        Message.FUSE_LINK_UNKNOWN,
                        new Place("", 0, 0, "--link"),
                        name,
                        of(LinkType.K).stream()
                                .map(l -> String.valueOf(l.ratedAmperes()))
                                .collect(Collectors.joining(", "))));
    }

    private static List<Link> read() {
        List<Link> links = new ArrayList<>();
        read(LinkType.K, FAST, links);
        read(LinkType.T, SLOW, links);
        links.sort(Comparator.comparingInt(Link::ratedAmperes).thenComparing(Link::type));
        return List.copyOf(links);
    }

    private static void read(LinkType type, String table, List<Link> links) {
        for (String line : table.split("\n", -1)) {
            if (!line.isBlank()) {
                String[] cells = line.strip().split(" +", -1);
                int rated = Integer.parseInt(cells[0]);
                double longest = rated > 100 ? 600.0 : 300.0;
                links.add(new Link(
                        type,
                        rated,
                        cells[1].equals("preferred"),
                        List.of(
                                point(longest, cells[2], cells[3]),
                                point(10.0, cells[4], cells[5]),
                                point(0.1, cells[6], cells[7]))));
            }
        }
    }

    private static Link.Point point(double seconds, String least, String most) {
        return new Link.Point(seconds, Double.parseDouble(least), Double.parseDouble(most));
    }
}
