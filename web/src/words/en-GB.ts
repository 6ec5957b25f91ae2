import type { Catalogue } from './en-US';
import { enUS } from './en-US';

/** British English: what differs. */
export const enGB: Catalogue = {
  ...enUS,
  'settings.ground': 'Background of the screen',
  'newBank.hint': 'Every value in it is of another bank: replace each by what the rating plates, drawings and relay say.',
  'job.stopHint': 'Nobody goes on until somebody says that it goes on, and why. Waits start anew. What is earthed stays earthed.',
  'step.kind.ground': 'EARTH',
  'step.kind.energize': 'ENERGISE',
  'order.rules':
    'Local codes, the owner’s rules, the maker’s instructions and authorised people come first. An order that can’t be proven is not made.',
  'order.inDoneHint': 'People sign on with their own locks, then units are measured. Earths and shorts stay on while anybody works.',
  'spares.unit': 'Unit type on its rating plate',
  'energize.title': 'Energised: expected and measured',
  'energize.bus': 'Busbar voltage, line to line',
  'energize.noBus': 'Read the busbar voltage first: what is expected follows from it.',
  'units.types': 'Rating plates',
  'units.capacitance': 'Capacitance by rating plate',
  'studies.duty.hint': 'Voltage, current and reactive power against what units, fuses and busbar may bear.',
  'locate.bus': 'Busbar voltage [kV]',
  'locate.numbers': 'Angle and busbar voltage must be numbers.',
  'tour.states':
    'What is live, charged or earthed after the last confirmed step. Press a name, or tap a line in the drawing: why is it live?',
  'tour.wayBack': 'Counted tools and earths, keys, stages one by one, expected amperes against measured.',
  'open.notEnergized': 'The bank is back in service, and neither busbar voltage nor currents were read.',
  'report.noEnergize': 'No busbar voltage was read, so that nothing could be expected.',
  'report.bus': 'Busbar voltage {volts}.',
};
