import { INCH, type Marks } from '../length.ts';
import { moistureContent } from '../wood/moisture.ts';
import { siteMoisture } from '../wood/places.ts';
import type { Wood } from '../wood/wood.ts';
import { type Assumptions, assumptions } from './assume.ts';
import { completePanel, mergePanel } from './completepanel.ts';
import type { Fault } from './context.ts';
import type { JobFile } from './file.ts';
import type { Job, Run, Site } from './job.ts';
import { completeLong, completeSaw, completeStock, customaryStock } from './supply.ts';

/**
 * The job with every default filled in and listed, or what keeps it from being one: things that no single field shows,
 * such as a panel with neither size nor opening.
 */
export function completeJob(file: JobFile): { readonly job: Job; readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const display = marks(file, faults);
  const assume = assumptions(display);
  if (file.mark === undefined)
    assume.value(
      ['mark'],
      undefined,
      display.unit === 'in' ? '1/16 in' : '1 mm',
      'the finest mark of an ordinary tape',
    );
  const site = completeSite(file, assume, faults);
  const woods = (file.woods ?? []).map(ownWood);
  const panels = file.panels.map((panel, i) => {
    const merged = { ...mergePanel(file.every ?? {}, panel), name: panel.name };
    return completePanel(merged, { at: ['panels', i], display, assume, faults, woods, site });
  });
  namesDiffer(file, faults);
  const used = [...new Set(panels.flatMap((panel) => Object.values(panel.wood).map(({ wood }) => wood.name)))];
  const context = { display, assume, faults, woods, used };
  const stock = file.stock?.map((board, i) => completeStock(board, ['stock', i], context)) ?? customaryStock(context);
  const offcuts = (file.offcuts ?? []).map((board, i) => completeStock(board, ['offcuts', i], context));
  const job: Job = {
    name: file.job,
    display,
    ...(file.shop !== undefined && { shop: file.shop }),
    ...(file.client !== undefined && { client: file.client }),
    drawing: assume.value(['drawing'], file.drawing, '1', 'a sheet needs a number to be called by'),
    ...(file.date !== undefined && { date: file.date }),
    revision: file.revision ?? 'A',
    notes: file.notes ?? [],
    currency: file.currency ?? '',
    panels,
    runs: completeRuns(file, assume, faults),
    site,
    stock,
    offcuts,
    saw: completeSaw(file.saw ?? {}, context),
    long: completeLong(file.saw ?? {}, context),
    spare: assume.value(['spare'], file.spare, 10, 'one slat in ten against breakage, common practice, no source'),
    finish: completeFinish(file, site, assume),
    paper: {
      sheets: assume.value(
        ['paper', 'sheets'],
        file.paper?.sheets,
        display.unit === 'in' ? 'Letter' : 'A4',
        'what a home printer holds',
      ),
      sticks: assume.value(
        ['paper', 'sticks'],
        file.paper?.sticks,
        display.unit === 'in' ? 'Letter' : 'A4',
        'what a home printer holds',
      ),
      margin: assume.length(
        ['paper', 'margin'],
        file.paper?.margin,
        display.unit === 'in' ? INCH / 2 : 12,
        'more than home printers leave blank',
      ),
      printed: { across: file.paper?.printed?.across ?? 100, along: file.paper?.printed?.along ?? 100 },
    },
    assumed: assume.list,
  };
  return { job, faults };
}

function marks(file: JobFile, faults: Fault[]): Marks {
  if (file.unit === 'mm') {
    const mark = file.mark ?? 1;
    if (![0.5, 1].includes(mark))
      faults.push({ path: ['mark'], message: 'expected 0.5 or 1: the marks of a millimetre tape' });
    return { unit: 'mm', mark };
  }
  const mark = file.mark ?? INCH / 16;
  if (![8, 16, 32, 64].some((part) => Math.abs(mark - INCH / part) < 1e-9)) {
    faults.push({ path: ['mark'], message: 'expected 1/8, 1/16, 1/32 or 1/64: the marks of an inch tape' });
  }
  return { unit: 'in', mark };
}

/** Moisture that the place brings. Defaults: Wood Handbook (FPL-GTR-190) Table 13-2, most of the United States. */
function completeSite(file: JobFile, assume: Assumptions, faults: Fault[]): Site {
  const site = file.site ?? {};
  const uses = [...file.panels, file.every].map((panel) => panel?.use ?? file.every?.use ?? 'screen');
  const indoors = uses.every((use) => use === 'divider');
  const where = assume.value(
    ['site', 'where'],
    site.where,
    indoors ? 'indoors' : 'outdoors',
    'screens, guards and gates stand outdoors, dividers indoors',
  );
  const usual = where === 'indoors' ? { driest: 6, wettest: 10, built: 8 } : { driest: 9, wettest: 14, built: 12 };
  const { range, from } = siteRange(site, usual, faults);
  const wood = `range of wood in use ${where}, Wood Handbook FPL-GTR-190 Table 13-2, from memory`;
  const driest = range
    ? (site.driest ?? range.driest)
    : assume.value(['site', 'driest'], site.driest, usual.driest, wood);
  const wettest = range
    ? (site.wettest ?? range.wettest)
    : assume.value(['site', 'wettest'], site.wettest, usual.wettest, wood);
  const middle = range ? Math.round((driest + wettest) / 2) : Math.min(Math.max(usual.built, driest), wettest);
  const built = assume.value(['site', 'built'], site.built, middle, 'build near the middle of what the place brings');
  if (driest > wettest)
    faults.push({ path: ['site', 'driest'], message: `expected at most the wettest, ${wettest} %` });
  return {
    where,
    from,
    driest,
    wettest,
    built,
    salt: site.salt ?? false,
    ...(site.wind && { wind: { speed: site.wind.speed, exposure: site.wind.exposure ?? 'C' } }),
  };
}

function siteRange(
  site: NonNullable<JobFile['site']>,
  usual: { readonly driest: number; readonly wettest: number },
  faults: Fault[],
): { readonly range?: { readonly driest: number; readonly wettest: number }; readonly from: string } {
  if (site.place !== undefined) {
    const found = siteMoisture(site.place);
    if (!found) {
      faults.push({
        path: ['site', 'place'],
        message: 'no moisture figures for this place; give driest and wettest in percent, or a climate',
      });
      return { range: usual, from: '' };
    }
    return { range: found, from: `monthly outdoor moisture of sheltered wood at ${found.place}` };
  }
  if (site.climate) {
    const { temperature, humidity } = site.climate;
    const at = (share: number) => Math.round(moistureContent({ temperature, humidity: share }) * 10) / 10;
    return {
      range: { driest: at(humidity.driest), wettest: at(humidity.wettest) },
      from: `${temperature} °C and ${humidity.driest} to ${humidity.wettest} % humidity`,
    };
  }
  return {
    from: site.driest !== undefined && site.wettest !== undefined ? 'the job' : 'the usual range of wood in use',
  };
}

function ownWood(own: NonNullable<JobFile['woods']>[number]): Wood {
  return {
    name: own.name,
    modulus: own.modulus,
    strength: own.strength,
    specificGravity12: own.gravity,
    shrinkage: own.shrinkage,
    fibreSaturation: own.saturation ?? 30,
    ...(own.decay !== undefined && { decay: { group: own.decay } }),
    source: `the job: ${own.source}`,
  };
}

function namesDiffer(file: JobFile, faults: Fault[]): void {
  const seen = new Set<string>();
  file.panels.forEach(({ name }, i) => {
    if (seen.has(name))
      faults.push({ path: ['panels', i, 'name'], message: 'two panels have this name; give each its own' });
    seen.add(name);
  });
}

function completeRuns(file: JobFile, assume: Assumptions, faults: Fault[]): Run[] {
  const known = new Set(file.panels.map(({ name }) => name));
  const named = new Set<string>();
  return (file.runs ?? []).map((run, i) => {
    if (named.has(run.name))
      faults.push({ path: ['runs', i, 'name'], message: 'two runs have this name; give each its own' });
    named.add(run.name);
    run.panels.forEach((name, j) => {
      if (!known.has(name))
        faults.push({
          path: ['runs', i, 'panels', j],
          message: `no panel has this name; panels: ${[...known].join(', ')}`,
        });
    });
    return {
      name: run.name,
      panels: run.panels,
      post: assume.length(['runs', i, 'post'], run.post, 0, 'no posts were named: the panels stand side by side'),
      gap: assume.length(['runs', i, 'gap'], run.gap, 0, 'no gap was named'),
    };
  });
}

function completeFinish(file: JobFile, site: Site, assume: Assumptions): Job['finish'] {
  const kind = assume.value(
    ['finish', 'kind'],
    file.finish?.kind,
    'penetrating',
    'thin oil or stain reaches between the slats after weaving',
  );
  const usual = kind === 'none' ? 0 : 2;
  return {
    kind,
    coats:
      kind === 'none'
        ? 0
        : assume.value(['finish', 'coats'], file.finish?.coats, usual, 'two coats, common practice, no source'),
    name: file.finish?.name ?? (kind === 'none' ? 'none' : site.where === 'outdoors' ? 'exterior oil or stain' : 'oil'),
  };
}
