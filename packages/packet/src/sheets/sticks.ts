import {
  cornerTemplate,
  courseStick,
  type Drawing,
  numberPages,
  railEndTemplate,
  type Sheet,
  staveStick,
  stileEndTemplate,
  type TilePaperName,
  tile,
} from '@wattlewright/drafting';
import type { Job, Settled } from '@wattlewright/model';

/** Every full-size page of a job: sticks and templates of each panel that differs, tiled on the job's paper. */
export function stickSheets({ job, panels, parts }: Settled): Sheet[] {
  const seen = new Set<string>();
  const drawings = panels.flatMap((panel) =>
    [staveStick, courseStick, railEndTemplate, stileEndTemplate, cornerTemplate].flatMap((make): Drawing[] => {
      const drawing = make(panel, { parts });
      // Panels alike share their sticks; the name of the panel is on the drawing, so it is left out of the comparison.
      const key = `${drawing.name}|${JSON.stringify([panel.outside, panel.spec, panel.courses]).replace(JSON.stringify(panel.name), '')}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [drawing];
    }),
  );
  return numberPages(drawings.flatMap((drawing, i) => fullSizePages(drawing, job, i + 1)));
}

/** A full-size drawing over the pages of the job's paper, with the printer's error taken out; `series` is its number in a file. */
export function fullSizePages(drawing: Drawing, { paper }: Pick<Job, 'paper'>, series?: number): Sheet[] {
  return tile(drawing, {
    paper: paper.sticks as TilePaperName,
    margin: paper.margin,
    printed: paper.printed,
    ...(series === undefined ? {} : { series }),
  });
}
