package org.varwright.plot;

import java.util.Optional;

/**
 * A text that found no room in a panel and stands under the chart.
 *
 * @param number by which the panel refers to it
 * @param dash of the curve that it names
 */
record Note(String number, String text, Optional<Dash> dash, Marker marker) {}
