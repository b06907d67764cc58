import { elevation, picture, standardScale, staveStick, toSvg, weaveBay } from '@wattlewright/drafting';
import { check, type Panel, partsOf, planCutsQuick, readJob, solve } from '@wattlewright/model';

/** A job file read, solved, checked and drawn: all that was worked out as JSON, and four views as SVG. */
export function drawJob(text: string): { readonly settled: string; readonly drawings: readonly string[] } {
  const job = readJob(text);
  const panels = solve(job);
  const parts = partsOf(panels, { spare: job.spare });
  const { stock, offcuts, saw } = job;
  const plan = planCutsQuick({ parts, stock, offcuts, saw, limits: { effort: 1 } });
  const findings = check(job, { panels, parts, plan });
  const panel = panels[0] as Panel;
  const scale = standardScale(0.125, job.display.unit);
  const full = standardScale(1, job.display.unit);
  const drawings = [
    elevation(panel, { scale, parts }),
    picture(panel, { scale, parts }),
    weaveBay(panel, { scale: full, parts }),
    staveStick(panel, { parts }),
  ];
  return {
    settled: JSON.stringify({ panels, parts, plan, findings }),
    drawings: drawings.map((drawing) => toSvg(drawing)),
  };
}

Object.assign(globalThis, { drawJob });
