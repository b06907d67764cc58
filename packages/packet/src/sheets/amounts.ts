import { massText, type Unit } from '@wattlewright/model';

/** A mass in kg as text in the job's customary unit, as the lists and steps print it. */
export function weightText(mass: number, unit: Unit): string {
  return massText(mass, { unit, mark: 1 });
}
