/** A bank file to begin with: every value is an example and says so. */
import { edits, scalars } from './yaml';

/** The text for people who begin from nothing; invented values that pass every check. */
export const TEMPLATE = `format: varwright/1
name: NAME                         # replace every value below by what the nameplates and drawings say
label: LABEL                       # as it stands on the bank, so that it can be confirmed on site
standard: IEEE                     # IEEE or IEC: which limits and which words
system:
  voltage: 13.8 kV                 # nominal, line to line
  maximum-voltage: 14.5 kV         # highest sustained
  frequency: 60 Hz
  short-circuit: 200 MVA           # three-phase, at the bus
  x-over-r: 8
  grounding: solid                 # solid, resistance, reactance, isolated or resonant
unit-types:
  - name: U200                     # from the nameplate of the unit
    rating: 200 kvar
    voltage: 7.96 kV
    frequency: 60 Hz
    tolerance: [0 %, +10 %]
    discharge: {to: 50 V, within: 5 min}
    bushings: 2
fuse-types:
  - {name: F40, kind: expulsion, link: 40T, voltage: 8.3 kV, maximum-parallel-energy: 15 kJ}
stages:
  - {name: stage 1, connection: wye-ungrounded, switch: 24-1, groups: 1, units: 2, unit: U200, fuse: F40}
protection:
  - {stage: stage 1, senses: neutral-voltage, ratio: "8400:120", alarm: 4 V, trip: 12 V, delay: 0.5 s}
isolation:
  sources:                         # everything that can make it live: second feeds, control supply and voltage transformers, too
    - {name: feeder, at: line}
  devices:
    - {name: 89-1, kind: disconnector, between: [line, bus], seen-through: window}
    - {name: 24-1, kind: stage-switch, between: [bus, stage 1]}
    - {name: 57-1, kind: grounding-switch, between: [bus, ground], seen-through: window}
    - {name: 43-1, kind: selector, positions: [off, auto]}
  compartments:
    - {name: bay 1, exposes: [bus, stage 1]}
  locks:
    - {device: 43-1, key: K-1, holds: off}
    - {device: 89-1, key: K-1, holds: closed}
    - {device: 89-1, key: K-2, holds: open}
    - {device: 57-1, key: K-2, holds: open}
    - {device: 57-1, key: K-3, holds: closed}
    - {door: bay 1, key: K-3}
  interlocks:
    - {device: 24-1, to: closed, requires: {43-1: auto}}
  delays:
    - {lock: {device: 43-1, key: K-1}, after: 5 min, open: 24-1}
`;

/** The text under another name; its label, which is on another bank, is left for a person to read there. */
export async function renamed(text: string, name: string): Promise<string> {
  let made = text;
  for (const [key, value] of [
    ['name', name],
    ['label', 'not read yet'],
  ] as const) {
    const field = (await scalars(made)).find((f) => f.path.length === 1 && f.path[0] === key);
    if (field !== undefined) {
      made = edits(made, field, value);
    }
  }
  return made;
}
