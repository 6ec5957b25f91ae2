import type { Catalogue } from './en-US';
import { enUS } from './en-US';

/** British English: what differs. */
export const enGB: Catalogue = {
  ...enUS,
};
