package org.varwright.bank;

/** How the neutral of the supply system is joined to ground. */
public enum SystemGrounding {
    SOLID,
    RESISTANCE,
    REACTANCE,
    ISOLATED,
    RESONANT
}
