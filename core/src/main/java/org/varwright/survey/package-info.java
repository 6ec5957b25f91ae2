/** Readings taken on a bank, and what they say of every unit: verdict, probability and reason. */
@NullMarked
package org.varwright.survey;

import org.jspecify.annotations.NullMarked;
