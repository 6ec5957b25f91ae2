/** An order of work as the screens go through it. */
import type { Confirmed, JobOrder, JobState, Step } from '../core/core';

/** Which half of an order a step belongs to. */
export type Half = 'in' | 'back';

export function steps(order: JobOrder, half: Half): readonly Step[] {
  return half === 'in' ? order.work.in : order.work.back;
}

/** The step to be done next, where it lies in this half. */
export function nextStep(order: JobOrder, half: Half): Step | undefined {
  return order.standing === 'current' && order.next !== null ? steps(order, half).find((s) => s.n === order.next) : undefined;
}

export function confirmation(order: JobOrder, step: Step): Confirmed | undefined {
  return order.confirmed.find((c) => c.step === step.n);
}

/** The state of every conductor as the order leaves it so far; undefined where nothing is confirmed, or where nobody knows. */
export function lastConfirmed(order: JobOrder): Step | undefined {
  const last = order.confirmed.at(-1)?.step;
  return last === undefined ? undefined : [...order.work.in, ...order.work.back].find((s) => s.n === last);
}

/** The start of the wait of this step on this device [ms]; undefined where it has not begun here. */
export function holdStart(state: JobState, device: string, step: Step): number | undefined {
  const order = state.order;
  return state.holds.find((h) => h.device === device && h.order === order?.id && h.step === step.n)?.from;
}
