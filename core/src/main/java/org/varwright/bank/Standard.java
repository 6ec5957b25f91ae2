package org.varwright.bank;

/** Which limits apply and which words are printed. */
public enum Standard {
    IEEE,
    IEC
}
