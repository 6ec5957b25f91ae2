/** A table on its way into a job: shown as it is understood, and taken in only after that. */
import type { Problem } from '../core/core';
import { reason, told } from '../core/told';
import { tableText } from './files';
import { plainName } from '../store/attachments';
import type { JobSession } from '../job/session.svelte';

export class TableIntake<T> {
  /** Whether it is on the screen. */
  open = $state(false);
  file = $state('');
  text = $state('');
  understood = $state.raw<T | undefined>(undefined);
  problems = $state.raw<readonly Problem[]>([]);
  failure = $state('');

  /**
   * @param session that takes it in
   * @param type of the event that takes it in
   * @param read what `core` makes of the text
   */
  constructor(
    readonly session: JobSession,
    readonly type: string,
    readonly read: (text: string) => Promise<T>,
  ) {}

  show(name: string, text: string): void {
    this.session.clear();
    this.file = name;
    this.text = text;
    this.open = true;
    void this.understand();
  }

  async choose([chosen]: readonly File[]): Promise<void> {
    if (chosen === undefined) {
      return;
    }
    try {
      this.show(plainName(chosen.name), await tableText(chosen));
    } catch (error) {
      this.show(plainName(chosen.name), '');
      this.failure = reason(error);
    }
  }

  /** Reads the text as it is now; an answer that comes after more was typed is dropped. */
  async understand(): Promise<void> {
    const asked = this.text;
    this.understood = undefined;
    this.problems = [];
    this.failure = '';
    if (asked.trim() === '') {
      return;
    }
    try {
      const made = await this.read(asked);
      if (asked === this.text) {
        this.understood = made;
      }
    } catch (error) {
      if (asked === this.text) {
        ({ problems: this.problems, failure: this.failure } = told(error));
      }
    }
  }

  async take(): Promise<void> {
    if (await this.session.add(this.type, { file: this.file, text: this.text })) {
      this.open = false;
    }
  }
}
