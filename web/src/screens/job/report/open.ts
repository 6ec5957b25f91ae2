/** What is not closed in a job, one sentence each. */
import type { JobState, UnitSurvey } from '../../../core/core';
import { t } from '../../../words/words.svelte';
import { stagesInReach } from '../readings/units';
import type { Results } from './results';

export function openPoints(state: JobState, made: Results): readonly string[] {
  return [...ofJob(state), ...ofUnits(state, made), ...ofService(state, made)];
}

function ofJob(state: JobState): string[] {
  const points: string[] = [];
  const order = state.order;
  if (state.stopped !== null) {
    points.push(t('open.stopped', { reason: state.stopped }));
  }
  if (order === null) {
    points.push(t('open.noOrder'));
  } else if (order.standing === 'ended') {
    points.push(t('open.ended', { why: order.why ?? '' }));
  } else if (order.next !== null) {
    const all = order.work.in.length + order.work.back.length;
    points.push(t('open.steps', { count: all - order.confirmed.length, next: order.next }));
  }
  if (state.people.length > 0) {
    points.push(t('open.people', { names: state.people.map((p) => p.person).join(', ') }));
  }
  points.push(...state.conflicts.map((c) => t('open.conflict', { about: c.about })));
  if (state.notCounted.length > 0) {
    points.push(t('job.notCounted', { count: state.notCounted.length }));
  }
  points.push(...state.findings);
  return points;
}

function ofUnits(state: JobState, made: Results): string[] {
  const survey = made.after ?? made.survey;
  if (survey === undefined) {
    return [t('open.nothingMeasured')];
  }
  const reach = stagesInReach(made.bank, state.order);
  const gone = new Set(state.unitMoves.map((m) => m.body.from).filter((from) => (from ?? '') !== ''));
  const filled = new Set(state.unitMoves.map((m) => m.body.to).filter((to) => (to ?? '') !== ''));
  const inReach = (u: UnitSurvey) => [...reach].some((stage) => u.position.startsWith(`${stage}/`));
  const points: string[] = [];
  const unmeasured = survey.units.filter((u) => u.verdict === 'not-measured' && inReach(u));
  if (unmeasured.length > 0) {
    points.push(t('open.notMeasured', { units: unmeasured.map((u) => u.position).join(', ') }));
  }
  for (const unit of survey.units) {
    if (unit.verdict === 'measure-again') {
      points.push(t('open.measureAgain', { unit: unit.position, reason: unit.reason }));
    } else if (unit.verdict === 'replace' && !gone.has(unit.position)) {
      points.push(t('open.replace', { unit: unit.position, reason: unit.reason }));
    } else if (unit.verdict === 'watch') {
      points.push(t('open.watch', { unit: unit.position, reason: unit.reason }));
    }
  }
  const empty = [...gone].filter((position) => !filled.has(position));
  if (empty.length > 0) {
    points.push(t('open.empty', { units: empty.join(', ') }));
  }
  if (state.unitMoves.length > 0) {
    points.push(t('open.bankFile'));
  }
  return points;
}

function ofService(state: JobState, made: Results): string[] {
  const points: string[] = [];
  for (const compared of made.energize?.comparison ?? []) {
    if (compared.verdict !== 'pass') {
      points.push(t('open.outside', { place: compared.leg, words: compared.words }));
    }
  }
  if (state.order?.phase === 'in-service' && made.energize === undefined) {
    points.push(t('open.notEnergized'));
  }
  const left = new Map(state.asLeft.map((a) => [a.body.selector, a.body.position]));
  for (const selector of (made.bank.isolation?.devices ?? []).filter((d) => d.kind === 'selector')) {
    const position = left.get(selector.name);
    if (position === undefined && (state.order?.confirmed.length ?? 0) > 0) {
      points.push(t('open.asLeft', { selector: selector.name }));
    } else if (position !== undefined && position !== selector.inService) {
      points.push(t('open.asLeftOther', { selector: selector.name, position, wanted: selector.inService }));
    }
  }
  return points;
}
