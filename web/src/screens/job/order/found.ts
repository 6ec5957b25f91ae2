/** What a person found before a new order of work: every device, door, ground and short, each looked at. */
export interface Found {
  readonly positions: Readonly<Record<string, string>>;
  readonly openDoors: readonly string[];
  readonly grounds: Readonly<Record<string, number>>;
  readonly shorts: Readonly<Record<string, number>>;
}
