package org.varwright.interlock;

import org.varwright.bank.Lock;

/** Where a copy of a key is. */
public sealed interface KeyPlace {
    /** Trapped in a lock whose bolt is withdrawn. */
    record InLock(Lock lock) implements KeyPlace {}

    /** Trapped in an exchange. */
    record InExchange(String exchange) implements KeyPlace {}

    /** In someone's hand, or hanging in a lock that it does not release. */
    record Free() implements KeyPlace {}
}
