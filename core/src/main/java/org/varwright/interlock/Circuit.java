package org.varwright.interlock;

/**
 * What is joined to what for one set of closed devices. Conductors are bits by their order, ground first; devices, stages and doors are the bits that they have in a state.
 */
final class Circuit {
    /** The closed devices. */
    final long closed;
    /** Conductors joined to a source of 1 kV or more. */
    final long live;
    /** Conductors joined to low-voltage sources only. */
    final long lowVoltage;
    /** Conductors joined to ground and to no source. */
    final long grounded;
    /** Stages joined to a live conductor. */
    final long liveStages;
    /** Stages joined to ground, live or not. */
    final long groundJoinedStages;
    /** Whether any source is joined to ground. */
    final boolean sourceOnGround;
    /** Disconnectors whose move would make or break the current of a stage. */
    final long loadBreak;
    /** Doors whose compartment exposes a live conductor. */
    final long doorsToLive;
    /** Doors whose compartment exposes a low-voltage conductor. */
    final long doorsToLowVoltage;
    /** Doors whose compartment exposes a conductor that is neither grounded nor a stage behind an open switch. */
    final long doorsToUngrounded;
    /** For each stage, the doors that expose a charged conductor if that stage is charged. */
    private final long[] doorsToStage;

    private final long[] stages;

    Circuit(
            long closed,
            Reach reach,
            boolean sourceOnGround,
            long loadBreak,
            Doors doors,
            long[] stages,
            long[] doorsToStage) {
        this.closed = closed;
        live = reach.live();
        lowVoltage = reach.lowVoltage();
        grounded = reach.grounded();
        liveStages = reach.liveStages();
        groundJoinedStages = reach.groundJoinedStages();
        this.sourceOnGround = sourceOnGround;
        this.loadBreak = loadBreak;
        doorsToLive = doors.toLive();
        doorsToLowVoltage = doors.toLowVoltage();
        doorsToUngrounded = doors.toUngrounded();
        this.stages = stages;
        this.doorsToStage = doorsToStage;
    }

    /** What sources and ground reach. */
    record Reach(long live, long lowVoltage, long grounded, long liveStages, long groundJoinedStages) {}

    /** Which doors lead to what. */
    record Doors(long toLive, long toLowVoltage, long toUngrounded) {}

    /** Doors that expose a charged conductor with these stages charged. */
    long doorsToCharged(long charged) {
        long dangerous = charged & ~liveStages & ~groundJoinedStages;
        long doors = 0;
        for (int s = 0; dangerous != 0 && s < stages.length; s++) {
            doors |= (dangerous & stages[s]) != 0 ? doorsToStage[s] : 0;
        }
        return doors;
    }
}
