package org.varwright.interlock;

import org.varwright.bank.Isolation;

/**
 * A change of the scheme that might close something.
 *
 * @param fault the fault that there was if it does
 * @param text what to change
 * @param isolation the scheme with the change
 */
record Change(DesignFault.Kind fault, String text, Isolation isolation) {}
