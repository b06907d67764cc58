import { type Drawing, fractions, tablePages } from '@wattlewright/drafting';
import { drillText, formatLength, gluedStrips, type ScrewRow, type Settled, screwSchedule } from '@wattlewright/model';

/** Screws and pins by joint: which, how many, what to drill, where, and what to watch; panels alike share a row. */
export function screwTable(
  { job, panels }: Settled,
  room: { readonly width: number; readonly height: number },
): Drawing[] {
  const rows = new Map<string, { cells: string[]; panels: string[] }>();
  for (const panel of panels) {
    for (const row of screwSchedule(panel)) {
      const { joint, name, count, material, where, remark } = row;
      const cells = [joint, `${name}, ${material}`, `${count}`, bitsText(row, job), where, remark ?? ''].map(fractions);
      const key = cells.join('|');
      rows.set(key, { cells, panels: [...(rows.get(key)?.panels ?? []), panel.name] });
    }
  }
  for (const panel of panels) {
    for (const { joint, where, why } of gluedStrips(panel)) {
      const cells = [joint, 'glue alone', '', '', where, why].map(fractions);
      const key = cells.join('|');
      rows.set(key, { cells, panels: [...(rows.get(key)?.panels ?? []), panel.name] });
    }
  }
  const all = [...rows.values()];
  if (all.length === 0) return [];
  return tablePages({
    name: 'screws',
    title: `Screws and pins by joint (sizes in ${job.display.unit === 'in' ? 'inches' : 'mm'})`,
    alt: 'Every joint with its screws or pins, what to drill, where they go and what to watch.',
    columns: [
      { title: 'Joint', width: 26 },
      { title: 'Screw or pin', width: 34 },
      { title: 'Each panel', align: 'right' },
      { title: 'Drill', width: 36 },
      { title: 'Where' },
      { title: 'Watch', width: 40 },
      ...(panels.length > 1 ? [{ title: 'Panels', width: 24 }] : []),
    ],
    rows: all.map(({ cells, panels: names }) => [
      ...cells,
      ...(panels.length > 1 ? [names.length === panels.length ? 'all' : names.join(', ')] : []),
    ]),
    ...room,
  });
}

/** The bits of one joint: the counterbore first, since nothing can be bored centred after the others. */
function bitsText({ holes, plug }: ScrewRow, { display }: Settled['job']): string {
  const bit = (drill: NonNullable<ScrewRow['holes']>['pilot']) => drillText(drill, display.unit);
  const sunk = plug ? `first ${bit(plug.drill)}, ${formatLength(plug.depth, display)} deep, plugged after; ` : '';
  return `${sunk}pilot ${bit(holes.pilot)}${holes.clearance ? `, clearance ${bit(holes.clearance)}` : ''}`;
}
