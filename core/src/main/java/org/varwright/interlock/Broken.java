package org.varwright.interlock;

/** Which properties are broken, as {@link Property#bit()}s; the one place that says so for states and moves. */
final class Broken {
    static final int BY_STATE = Property.EXPOSED_LIVE.bit()
            | Property.EXPOSED_LOW_VOLTAGE.bit()
            | Property.EXPOSED_CHARGED.bit()
            | Property.CLOSED_TO_GROUND.bit()
            | Property.UNGROUNDED_ENTRY.bit();
    static final int BY_MOVE = Property.LOAD_BREAK.bit() | Property.RECHARGE.bit() | Property.GROUNDED_CHARGED.bit();

    private Broken() {}

    static int byState(Circuit circuit, long openDoors, long charged) {
        int broken = circuit.sourceOnGround ? Property.CLOSED_TO_GROUND.bit() : 0;
        if (openDoors != 0) {
            broken |= (circuit.doorsToLive & openDoors) != 0 ? Property.EXPOSED_LIVE.bit() : 0;
            broken |= (circuit.doorsToLowVoltage & openDoors) != 0 ? Property.EXPOSED_LOW_VOLTAGE.bit() : 0;
            broken |= (circuit.doorsToUngrounded & openDoors) != 0 ? Property.UNGROUNDED_ENTRY.bit() : 0;
            broken |= (circuit.doorsToCharged(charged) & openDoors) != 0 ? Property.EXPOSED_CHARGED.bit() : 0;
        }
        return broken;
    }

    /** A device is moved; {@code charged} are the stages charged before it. */
    static int byMove(Circuit before, Circuit after, long charged, long device) {
        int broken = (before.loadBreak & device) != 0 ? Property.LOAD_BREAK.bit() : 0;
        broken |= (charged & ~before.liveStages & after.liveStages) != 0 ? Property.RECHARGE.bit() : 0;
        broken |= (charged & ~before.groundJoinedStages & after.groundJoinedStages) != 0
                ? Property.GROUNDED_CHARGED.bit()
                : 0;
        return broken;
    }
}
