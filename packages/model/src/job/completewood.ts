import type { Grade } from '../parts/part.ts';
import { woodNamed, woodNames } from '../wood/species.ts';
import type { PanelContext } from './context.ts';
import type { PanelFile } from './file.ts';
import type { MemberWood, PanelSpec } from './job.ts';
import { nearestWord } from './nearest.ts';

/** That a wood is neither in the table nor among the job's own, and what would do. */
export function noSuchWood(name: string, own: readonly { readonly name: string }[]): string {
  const known = [...woodNames, ...own.map((wood) => wood.name)];
  const near = nearestWord(name, known);
  // A name that fits several, such as cedar, is met by those that hold it.
  const holding = known.filter((one) => one.toLowerCase().includes(name.toLowerCase()));
  const hint = near
    ? `did you mean ${near}? Else`
    : `name one of ${(holding.length > 0 ? holding : known).join('; ')}; or`;
  return `no such wood: ${name}; ${hint} give its figures under woods`;
}

/** The wood of each kind of member: the panel's one wood unless a member has its own. */
export function completeWood(file: PanelFile, { at, assume, faults, woods }: PanelContext): PanelSpec['wood'] {
  const common = file.wood?.all;
  const fallback = assume.value(
    [...at, 'wood'],
    common?.wood ?? file.wood?.rail?.wood ?? file.wood?.slat?.wood,
    'western redcedar',
    'light, durable and easy to split thin',
  );
  const member = (role: 'rail' | 'stile' | 'stave' | 'slat', grade: Grade): MemberWood => {
    const own = file.wood?.[role];
    const name = own?.wood ?? fallback;
    const found = woods.find((wood) => wood.name === name) ?? woodNamed(name);
    if (!found) {
      const path = own?.wood !== undefined ? [role, 'wood'] : common?.wood !== undefined ? ['all', 'wood'] : [];
      faults.push({ path: [...at, 'wood', ...path], message: noSuchWood(name, woods) });
    }
    return {
      wood: found ?? { name, modulus: 8000, strength: 50, specificGravity12: 0.4 },
      grade: own?.grade ?? common?.grade ?? grade,
      rings: own?.rings ?? common?.rings ?? 0,
    };
  };
  return {
    rail: member('rail', 'knotty'),
    stile: member('stile', 'knotty'),
    stave: member('stave', 'clear'),
    slat: member('slat', 'clear'),
  };
}
