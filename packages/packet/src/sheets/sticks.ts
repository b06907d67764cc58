import {
  cornerTemplate,
  courseStick,
  type Drawing,
  footTemplate,
  gather,
  numberPages,
  railEndTemplate,
  type Sheet,
  staveStick,
  stileEndTemplate,
  type TileOptions,
  type TilePaperName,
  tile,
} from '@wattlewright/drafting';
import type { Job, Panel, Part, Settled } from '@wattlewright/model';

import { panelNames } from './names.ts';

/** A full-size drawing of a panel that `named` calls by the names of all panels it serves; nothing where the panel has no such thing. */
type Maker = (
  panel: Panel,
  options: { readonly parts?: readonly Part[]; readonly named?: string },
) => Drawing | undefined;

const MAKERS: readonly Maker[] = [
  staveStick,
  courseStick,
  railEndTemplate,
  stileEndTemplate,
  cornerTemplate,
  footTemplate,
];

/** Every full-size page of a job: sticks and templates of each panel that differs, tiled on the job's paper. */
export function stickSheets(settled: Settled): Sheet[] {
  const pages = gather(stickDrawings(settled), optionsOf(settled.job));
  return numberPages(pages.flatMap((drawing, i) => fullSizePages(drawing, settled.job, i + 1)));
}

/** Sticks and templates, each drawn once for all panels that it serves and named after them, in the order of the panels. */
export function stickDrawings({ panels, parts }: Pick<Settled, 'panels' | 'parts'>): Drawing[] {
  const groups = new Map<string, { readonly maker: Maker; readonly served: Panel[] }>();
  for (const panel of panels)
    for (const [i, maker] of MAKERS.entries()) {
      const bare = maker({ ...panel, name: '' }, { named: '' });
      if (!bare) continue;
      const key = `${i} ${JSON.stringify(bare.marks, roughly)}`;
      const group = groups.get(key) ?? { maker, served: [] };
      group.served.push(panel);
      groups.set(key, group);
    }
  return [...groups.values()].flatMap(({ maker, served }) => {
    const drawing = maker(served[0] as Panel, { parts, named: panelNames(served.map(({ name }) => name)) });
    return drawing ? [drawing] : [];
  });
}

/** Numbers to a ten thousandth of a millimetre: sums of the same sizes in another order are alike. */
function roughly(_: string, value: unknown): unknown {
  return typeof value === 'number' ? Math.round(value * 1e4) : value;
}

/** A full-size drawing over the pages of the job's paper, with the printer's error taken out; `series` is its number in a file. */
export function fullSizePages(drawing: Drawing, job: Pick<Job, 'paper'>, series?: number): Sheet[] {
  return tile(drawing, { ...optionsOf(job), ...(series === undefined ? {} : { series }) });
}

function optionsOf({ paper }: Pick<Job, 'paper'>): TileOptions {
  return { paper: paper.sticks as TilePaperName, margin: paper.margin, printed: paper.printed };
}
