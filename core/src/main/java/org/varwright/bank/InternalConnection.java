package org.varwright.bank;

/** How the three phases of a three-phase unit are joined inside. */
public enum InternalConnection {
    DELTA,
    WYE_UNGROUNDED
}
