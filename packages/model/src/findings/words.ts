import { formatLength, INCH, type Marks } from '../length.ts';
import { pound, poundForce } from '../wood/inchpound.ts';

/** A length with its unit, to 1/64 in or 0.1 mm, so that small figures and limits differ in print. */
export function lengthText(length: number, { unit }: Marks): string {
  return formatLength(length, { unit, mark: unit === 'in' ? INCH / 64 : 0.1 }, { named: true });
}

/** A force: newtons, or pounds in inch work. */
export function forceText(force: number, { unit }: Marks): string {
  const size = unit === 'in' ? force / poundForce : force;
  return `${size.toFixed(size < 100 ? 1 : 0)} ${unit === 'in' ? 'lb' : 'N'}`;
}

/** A mass: kilograms, or pounds in inch work. */
export function massText(mass: number, { unit }: Marks): string {
  return unit === 'in' ? `${(mass / pound).toFixed(1)} lb` : `${mass.toFixed(1)} kg`;
}

/** A share of strength, such as `0.61 of the strength`. */
export function shareText(share: number): string {
  return `${share.toFixed(2)} of the strength`;
}
