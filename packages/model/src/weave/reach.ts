import { type Curve, sampleCurve } from './spline.ts';

/** Between two samples, mm at most: a bend of usual radius strays less than a hundredth of a millimetre between them. */
const STEP = 4;

/**
 * The least and the greatest z that the faces of a bent slat reach between two places along it, mm: its centre line with
 * half the thickness square to it, so that a leaning end counts with its outer corner.
 */
export function slatReach(
  curve: Curve,
  { from, to, thickness }: { readonly from: number; readonly to: number; readonly thickness: number },
): readonly [least: number, greatest: number] {
  const places = [from, to, ...curve.knots.map(({ x }) => x).filter((x) => x > from && x < to)].sort((a, b) => a - b);
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  places.forEach((start, i) => {
    const end = places[i + 1] ?? start;
    const pieces = Math.max(1, Math.ceil((end - start) / STEP));
    for (let k = 0; k <= pieces; k++) {
      const { z, slope } = sampleCurve(curve, start + ((end - start) * k) / pieces);
      const half = thickness / 2 / Math.hypot(1, slope);
      least = Math.min(least, z - half);
      greatest = Math.max(greatest, z + half);
    }
  });
  return [least, greatest];
}
