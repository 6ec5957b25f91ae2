package org.varwright.drawing;

import org.varwright.bank.Connection;
import org.varwright.bank.Device;
import org.varwright.bank.Standard;

/** A symbol on a vertical wire: it takes the place of the wire from its top to its bottom. */
sealed interface Symbol {
    /** Height it takes [px]. */
    double height();

    /** Whether the wire goes on below it. */
    default boolean goesOn() {
        return true;
    }

    /** A breaker, disconnector or switch in a position; empty text where the position is not known. */
    record Switch(Device.Kind kind, boolean withdrawable, String position, Standard standard) implements Symbol {
        @Override
        public double height() {
            return withdrawable ? 52.0 : 32.0;
        }
    }

    /** A unit fuse. */
    record Fuse() implements Symbol {
        @Override
        public double height() {
            return 20.0;
        }
    }

    /** A series reactor. */
    record Coil() implements Symbol {
        @Override
        public double height() {
            return 26.0;
        }
    }

    /** Capacitor plates, curved on one side in IEEE drawings. */
    record Plates(Standard standard) implements Symbol {
        @Override
        public double height() {
            return 12.0;
        }
    }

    /** How the three phases are joined. */
    record Joint(Connection connection) implements Symbol {
        @Override
        public double height() {
            return 20.0;
        }
    }

    /** Voltage transformer. */
    record VoltageTransformer() implements Symbol {
        @Override
        public double height() {
            return 22.0;
        }
    }

    /** Current transformer: the wire goes through. */
    record CurrentTransformer() implements Symbol {
        @Override
        public double height() {
            return 16.0;
        }
    }

    /** Ground. */
    record Ground() implements Symbol {
        @Override
        public double height() {
            return 10.0;
        }

        @Override
        public boolean goesOn() {
            return false;
        }
    }

    /** The end of a neutral that is joined to nothing. */
    record Loose() implements Symbol {
        @Override
        public double height() {
            return 6.0;
        }

        @Override
        public boolean goesOn() {
            return false;
        }
    }

    /** A source: an arrow down. */
    record Source() implements Symbol {
        @Override
        public double height() {
            return 16.0;
        }
    }
}
