/** The units of a bank in the order in which people walk along them. */
import type { Bank, JobState } from '../../../core/core';

export interface Unit {
  readonly position: string;
  readonly stage: string;
  readonly serial: string | null;
  readonly expectedFarads: number | null;
  readonly threePhase: boolean;
  /** Whether a compartment opened by the order of work gives access to it. */
  readonly inReach: boolean;
}

/** Stages that the order of work opens; all of them where there is no order, or where the file ties no stage to a compartment. */
export function stagesInReach(bank: Bank, order: JobState['order']): ReadonlySet<string> {
  const all = new Set(bank.stages.map((s) => s.name));
  const open = (bank.isolation?.compartments ?? []).filter((c) => order?.work.access.includes(c.name));
  const reached = new Set(open.flatMap((c) => c.exposes).filter((conductor) => all.has(conductor)));
  return reached.size === 0 ? all : reached;
}

export function unitsOf(bank: Bank, order: JobState['order']): readonly Unit[] {
  const reach = stagesInReach(bank, order);
  return bank.stages.flatMap((stage) => {
    const type = bank.unitTypes.find((t) => t.name === stage.unit);
    return stage.legs.flatMap((leg) =>
      leg.groups.flatMap((group) =>
        group.positions.map((p) => ({
          position: p.name,
          stage: stage.name,
          serial: p.serial,
          expectedFarads: p.capacitanceFarads ?? type?.capacitanceFarads ?? null,
          threePhase: stage.threePhaseUnits,
          inReach: reach.has(stage.name),
        })),
      ),
    );
  });
}
