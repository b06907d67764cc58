import type { Job } from '../job/job.ts';
import { formatLength } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { finishFor, QUART, toldLitres } from './finish.ts';
import { fittingsOf } from './fittings.ts';
import { BOTTLE, glueFor } from './glue.ts';
import type { Plug } from './plug.ts';
import { screwSchedule } from './schedule.ts';

/** One line of hardware to buy for the whole job. */
export interface HardwareLine {
  readonly kind: 'screw' | 'pin' | 'plug' | 'glue' | 'fitting' | 'finish';
  readonly name: string;
  readonly material: string;
  /** Wanted: pieces (of a bottle of glue the share used), or litres of finish, or mm of wire and track. */
  readonly count: number;
  /** To buy: a tenth over for screws, pins and plugs, whole numbers. */
  readonly buy: number;
  readonly unit: 'pieces' | 'litres' | 'mm';
  readonly where: readonly { readonly panel: string; readonly count: number }[];
}

/** Every screw, pin, plug and fitting, the glue and the finish of the whole job, equal ones in one line. */
export function hardwareList(job: Job, panels: readonly Panel[]): HardwareLine[] {
  const lines = new Map<string, HardwareLine>();
  const add = (line: Omit<HardwareLine, 'buy' | 'where'>, panel: Panel) => {
    const key = [line.kind, line.name, line.material, line.unit].join('|');
    const count = line.count * panel.count;
    const before = lines.get(key);
    const sum = (before?.count ?? 0) + count;
    const where = [...(before?.where ?? [])];
    const own = where.findIndex((place) => place.panel === panel.name);
    if (own >= 0) where[own] = { panel: panel.name, count: (where[own]?.count ?? 0) + count };
    else where.push({ panel: panel.name, count });
    lines.set(key, { ...line, count: sum, buy: toBuy(line.kind, sum), where });
  };
  for (const panel of panels) {
    for (const { fastener, name, material, count, plug } of screwSchedule(panel)) {
      add({ kind: fastener.kind, name, material, count, unit: 'pieces' }, panel);
      if (plug && !plug.open)
        add({ kind: 'plug', name: plugName(plug, panel), material: 'wood of the frame', count, unit: 'pieces' }, panel);
    }
    const glue = glueFor(panel);
    add({ kind: 'glue', name: glue.name, material: '', count: glue.litres / BOTTLE, unit: 'pieces' }, panel);
    for (const fitting of fittingsOf(panel)) add({ kind: 'fitting', ...fitting }, panel);
    const litres = toldLitres(finishFor(panel, job).litres, job.display.unit);
    if (litres > 0)
      add({ kind: 'finish', name: job.finish.name, material: '', count: litres / panel.count, unit: 'litres' }, panel);
  }
  return [...lines.values()];
}

function plugName({ drill }: Plug, { display }: Panel): string {
  return `wooden plug ${display.unit === 'in' ? `${drill.inch} in` : `${drill.metric} mm`}`;
}

function toBuy(kind: HardwareLine['kind'], count: number): number {
  if (kind === 'screw' || kind === 'pin' || kind === 'plug') return Math.ceil(Math.round(count * 110) / 100);
  // Finish was rounded up panel by panel; its total is their sum.
  return kind === 'finish' ? count : Math.ceil(count - 1e-9);
}

/** Amount of a line to buy in words, in the job's unit: `24`, `1.2 litres`, `1.3 US quarts`, `82 in`. */
export function amountText({ buy, unit }: HardwareLine, { display }: Pick<Job, 'display'>): string {
  return countText(buy, unit, display);
}

/** What one panel takes of a line, in the same words and to the same figure, so that panels add up to the total. */
export function shareText(
  { count }: HardwareLine['where'][number],
  { unit }: HardwareLine,
  job: Pick<Job, 'display'>,
): string {
  return countText(count, unit, job.display);
}

function countText(count: number, unit: HardwareLine['unit'], display: Job['display']): string {
  if (unit === 'pieces') return String(Math.round(count * 100) / 100);
  if (unit === 'mm') return formatLength(count, display, { named: true });
  return display.unit === 'in' ? `${(count / QUART).toFixed(1)} US quarts` : `${count.toFixed(1)} litres`;
}
