/**
 * Charts and phasor diagrams as SVG. Knows nothing of banks: curves, axes, limits and notes in, the text of one picture out.
 *
 * <pre>{@code
 * Panel volts = Panel.of(Axis.linear("voltage across the unit", Dimension.VOLTAGE).withZero())
 *         .with(Curve.of("as fitted", seconds, volts))
 *         .with(Limit.across(50.0, "50 V, safe to test"))
 *         .with(Band.across(0.0, 50.0, "within the limit"))
 *         .with(Callout.at(300.0, 31.2, "after 5 min: 31.2 V"));
 * String svg = Chart.of("Decay of stage 2", Axis.linear("time after opening", Dimension.TIME), volts)
 *         .under(Panel.of(Axis.linear("current", Dimension.CURRENT)).with(Curve.of("stick", seconds, amperes)))
 *         .caption("One unit, resistor at its upper tolerance (DIS-1).")
 *         .svg(Width.PAGE);
 * }</pre>
 *
 * <p>Values are SI; an axis picks the prefix (or the minutes) and prints it in its title. {@code Axis.log} takes values above zero only; others leave a gap,
 * as NaN does. Without {@code from} and {@code to} an axis takes in every curve, band, limit and callout.
 *
 * <p>Curves differ by dash pattern and carry their names at their ends, so that a copier loses nothing; colour repeats it. Any number of samples may be
 * given: what can't be told apart on the sheet is left out, peaks never. A name that finds no room is numbered and stands under the chart. The same input
 * always gives the same text. {@link org.varwright.plot.Width#PHONE} is laid out for a narrow screen; the page's own picture may be shrunk as well.
 */
@NullMarked
package org.varwright.plot;

import org.jspecify.annotations.NullMarked;
