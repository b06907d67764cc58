import type { Unit } from '@wattlewright/model';

/** One pound in kilograms, exact (international agreement of 1959). */
const POUND = 0.45359237;

/** A mass in kg as text in the job's customary unit, to half a unit. */
export function weightText(mass: number, unit: Unit): string {
  const amount = unit === 'in' ? mass / POUND : mass;
  return `${Math.round(amount * 2) / 2} ${unit === 'in' ? 'lb' : 'kg'}`;
}
