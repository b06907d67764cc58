import { amountText, type HardwareLine, type Job, massText, type Unit } from '@wattlewright/model';

/** Share of a tin past which no drop is to spare, so that one more is bought; common practice, no source. */
const BRIM = 0.9;

/** A mass in kg as text in the job's customary unit, as the lists and steps print it. */
export function weightText(mass: number, unit: Unit): string {
  return massText(mass, { unit, mark: 1 });
}

/** Litres in a US quart: 57.75 cubic inches (NIST Handbook 44). */
const QUART = (57.75 * 25.4 ** 3) / 1e6;

/**
 * What to buy of a line of hardware. Finish comes in tins: by the half litre, or a pint, quarts and a gallon; common
 * practice, no source. What is sold by length
 * comes by the whole foot, or by 100 mm. What the job takes of it stands beside.
 */
export function buyText(line: HardwareLine, job: Pick<Job, 'display'>): string {
  const amount = amountText(line, job);
  if (line.unit === 'mm') return `${lengthToBuy(line.buy, job.display.unit)} (${amount} used)`;
  if (line.unit !== 'litres') return amount;
  const used = Number.parseFloat(amount);
  return `${tinsText(job.display.unit === 'in' ? line.buy / QUART : line.buy, job.display.unit)} (${used.toFixed(1)} ${job.display.unit === 'in' ? 'US quarts ' : ''}used)`;
}

function lengthToBuy(length: number, unit: Unit): string {
  if (unit === 'in') return `${Math.ceil(length / (12 * 25.4) - 1e-9)} ft`;
  return `${(Math.ceil(length / 100 - 1e-9) / 10).toFixed(1)} m`;
}

function tinsText(amount: number, unit: Unit): string {
  // To the tenth that stands beside.
  const needed = Math.round(amount * 10) / 10;
  const whole = (tin: number): number => Math.max(1, Math.ceil(needed / tin / BRIM - 1e-9));
  if (unit === 'mm') return `${whole(0.5) / 2} litres`;
  const quarts = whole(1);
  if (needed <= 0.5 * BRIM) return '1 pint';
  if (quarts < 4) return quarts === 1 ? '1 quart' : `${quarts} quarts`;
  const gallons = Math.floor(quarts / 4);
  const rest = quarts % 4;
  return `${gallons} gallon${gallons > 1 ? 's' : ''}${rest > 0 ? ` and ${rest} quart${rest > 1 ? 's' : ''}` : ''}`;
}
