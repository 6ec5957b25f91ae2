/** A record on the screen: what it says, the stretch that is seen, and the phasors at a moment. */
import { told } from '../core/told';
import { result, type AtMoment, type DisturbanceRecord, type Problem, type RecordRequest, type Wave } from '../core/core';

const POINTS = 1_500;

export class RecordReading {
  record = $state.raw<DisturbanceRecord | undefined>(undefined);
  waves = $state.raw<readonly Wave[]>([]);
  at = $state.raw<AtMoment | undefined>(undefined);
  from = $state(0);
  to = $state(0);
  moment = $state<number | undefined>(undefined);
  channelMap = $state.raw<readonly string[]>([]);
  problems = $state.raw<readonly Problem[]>([]);
  failure = $state.raw('');
  working = $state(false);
  #request: RecordRequest = {};
  #asked = 0;

  async read(request: RecordRequest): Promise<void> {
    this.#request = request;
    this.record = undefined;
    this.at = undefined;
    this.moment = undefined;
    await this.#ask({ waveforms: { points: POINTS } }, (record) => {
      this.from = record.fromSeconds ?? 0;
      this.to = record.toSeconds ?? 0;
      this.waves = record.waveforms ?? [];
    });
  }

  /** Reads it again with what a person says about its channels. */
  async say(channelMap: readonly string[]): Promise<void> {
    this.channelMap = channelMap;
    await this.stretch(this.from, this.to);
  }

  async stretch(from: number, to: number): Promise<void> {
    const first = this.record?.fromSeconds ?? 0;
    const last = this.record?.toSeconds ?? 0;
    const start = Math.max(first, Math.min(from, to));
    const end = Math.min(last, Math.max(from, to));
    if (end - start <= 0) {
      return;
    }
    await this.#ask({ waveforms: { from: start, to: end, points: POINTS } }, (record) => {
      this.from = start;
      this.to = end;
      this.waves = record.waveforms ?? [];
    });
  }

  async phasorsAt(seconds: number): Promise<void> {
    this.moment = seconds;
    await this.#ask({ at: seconds }, (record) => (this.at = record.at));
  }

  async #ask(more: RecordRequest, use: (record: DisturbanceRecord) => void): Promise<void> {
    const asked = ++this.#asked;
    this.working = true;
    try {
      const record = await result('record', { ...this.#request, ...more, channelMap: this.channelMap });
      if (asked === this.#asked) {
        this.record = record;
        this.problems = [];
        this.failure = '';
        use(record);
      }
    } catch (error) {
      if (asked === this.#asked) {
        ({ problems: this.problems, failure: this.failure } = told(error));
      }
    } finally {
      if (asked === this.#asked) {
        this.working = false;
      }
    }
  }
}
