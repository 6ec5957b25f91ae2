/** Verdicts over everything read so far, worked out anew whenever something is read. */
import { told } from '../../../core/told';
import { Refused, result, type JobState, type Problem, type Survey, type UnitSurvey } from '../../../core/core';
import { t } from '../../../words/words.svelte';
import { limitsOf } from './fields';
import { allReadings, csv, namingRows, type Reading } from './table';

/** What `core` would say if a reading were kept. */
export interface Preview {
  readonly unit: UnitSurvey | undefined;
  /** Why the reading can't be used. */
  readonly problems: readonly string[];
}

export class Judge {
  survey = $state.raw<Survey | undefined>(undefined);
  problems = $state.raw<readonly Problem[]>([]);
  failure = $state.raw('');
  #of = '';

  unit(position: string): UnitSurvey | undefined {
    return this.survey?.units.find((u) => u.position === position);
  }

  async judge(state: JobState): Promise<void> {
    const of = `${state.hash} ${state.events}`;
    if (of === this.#of) {
      return;
    }
    this.#of = of;
    try {
      const readings = await allReadings(state, 'now');
      const survey =
        readings.length === 0
          ? undefined
          : named(await result('survey', { bank: state.bankText, readings: csv(readings), ...limitsOf(state) }), readings);
      if (of === this.#of) {
        this.survey = survey;
        this.problems = [];
        this.failure = '';
      }
    } catch (error) {
      if (of === this.#of) {
        ({ problems: this.problems, failure: this.failure } = told(error));
        this.#of = '';
      }
    }
  }

  /**
   * The verdict with one more reading.
   *
   * @param without readings that it would take the place of
   */
  async preview(state: JobState, reading: Omit<Reading, 'source'>, without: readonly string[]): Promise<Preview> {
    const kept = await allReadings({ ...state, readings: state.readings.filter((r) => !without.includes(r.id)) }, 'now');
    try {
      const all = [...kept, { ...reading, source: t('readings.thisOne') }];
      const survey = named(await result('survey', { bank: state.bankText, readings: csv(all), ...limitsOf(state) }), all);
      // The first row has the names of the columns.
      const row = new RegExp(`\\brow ${kept.length + 2}$`);
      return {
        unit: survey.units.find((u) => u.position === reading.position),
        problems: survey.problems.filter((p) => row.test(p.place)).map((p) => p.message),
      };
    } catch (error) {
      if (error instanceof Refused) {
        return { unit: undefined, problems: error.problems.map((p) => p.message) };
      }
      throw error;
    }
  }
}

function named(survey: Survey, readings: readonly Reading[]): Survey {
  const name = (sentence: string) => namingRows(sentence, readings);
  return {
    ...survey,
    units: survey.units.map((unit) => ({ ...unit, reason: name(unit.reason), remarks: unit.remarks.map(name) })),
    groups: survey.groups.map((group) => ({ ...group, reason: name(group.reason) })),
    findings: survey.findings.map(name),
  };
}
