import { pound, type Unit } from '@wattlewright/model';

/** A mass in kg as text in the job's customary unit, to half a unit. */
export function weightText(mass: number, unit: Unit): string {
  const amount = unit === 'in' ? mass / pound : mass;
  return `${Math.round(amount * 2) / 2} ${unit === 'in' ? 'lb' : 'kg'}`;
}
