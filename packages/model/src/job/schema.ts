import { z } from 'zod';
import type { Unit } from '../length.ts';
import { amount, grade, length, percent, type SizeKind, text, whole } from './bounds.ts';
import type { JobFile } from './file.ts';
import { panelSchema } from './panelschema.ts';

/** The zod source of a job file for one unit: bounds, shapes and lengths in mm. */
export function jobFileSchema(unit: Unit): z.ZodType<JobFile> {
  const mm = (kind: SizeKind) => length(unit, kind);
  const opt = (kind: SizeKind) => mm(kind).optional();
  const panel = panelSchema(unit);
  const moisture = amount({
    from: 0,
    to: 30,
    why: 'wood in use holds from 0 to about 30 % moisture (fibre saturation)',
  });

  const board = z.strictObject({
    name: text(60).optional(),
    thickness: mm('boardSide'),
    width: mm('boardSide'),
    length: mm('boardLength'),
    wood: text().optional(),
    grade: grade.optional(),
    surface: z.enum(['surfaced', 'rough']).optional(),
    price: amount({ from: 0, to: 1_000_000, why: 'prices are not negative' }).optional(),
    per: z.enum(['board', 'metre', 'foot', 'board foot']).optional(),
    count: whole({ from: 1, to: 100_000, why: 'boards are counted from 1' }).optional(),
    trim: opt('trim'),
  });

  const shrink = percent(30, 'shrinkage from green to ovendry stays under 30 %');

  return z.strictObject({
    job: text(80),
    unit: z.enum(['in', 'mm']),
    mark: mm('step').optional(),
    shop: text(60).optional(),
    client: text(60).optional(),
    drawing: text(16).optional(),
    date: z.iso.date('expected a date such as 2026-05-14').optional(),
    revision: text(2).optional(),
    notes: z.array(text(400)).max(20, 'expected at most 20 notes').optional(),
    currency: text(8).optional(),
    every: panel.optional(),
    panels: z
      .array(panel.extend({ name: text(60) }))
      .min(1, 'expected at least one panel')
      .max(60, 'expected at most 60 panels: use count for equal ones'),
    runs: z
      .array(
        z.strictObject({
          name: text(60),
          panels: z.array(text(60)).min(1, 'expected at least one panel'),
          post: opt('section'),
          gap: opt('gap'),
        }),
      )
      .optional(),
    site: z
      .strictObject({
        where: z.enum(['indoors', 'outdoors']).optional(),
        place: text(60).optional(),
        climate: z
          .strictObject({
            temperature: amount({ from: -30, to: 60, why: 'degrees Celsius at which the moisture relation holds' }),
            humidity: z.strictObject({
              driest: percent(95, 'percent; the moisture relation holds to 95 %'),
              wettest: percent(95, 'percent; the moisture relation holds to 95 %'),
            }),
          })
          .optional(),
        driest: moisture.optional(),
        wettest: moisture.optional(),
        built: moisture.optional(),
        wind: z
          .strictObject({
            speed: amount({ from: 1, to: 120, why: 'metres a second, 3 s gust; wind maps stay under 120' }),
            exposure: z.enum(['B', 'C', 'D']).optional(),
          })
          .optional(),
        salt: z.boolean().optional(),
      })
      .optional(),
    woods: z
      .array(
        z.strictObject({
          name: text(60),
          modulus: amount({ from: 500, to: 40000, why: 'modulus of elasticity in MPa' }),
          strength: amount({ from: 5, to: 400, why: 'modulus of rupture in MPa' }),
          gravity: amount({ from: 0.05, to: 1.5, why: 'specific gravity at 12 % moisture' }),
          shrinkage: z.strictObject({ radial: shrink, tangential: shrink }),
          saturation: amount({ from: 15, to: 40, why: 'fibre saturation in percent' }).optional(),
          decay: z.enum(['very resistant', 'resistant', 'moderately resistant', 'slightly or nonresistant']).optional(),
          source: text(),
        }),
      )
      .max(100, 'expected at most 100 woods')
      .optional(),
    stock: z.array(board).max(200, 'expected at most 200 kinds of board').optional(),
    offcuts: z.array(board).max(500, 'expected at most 500 kinds of offcut').optional(),
    saw: z
      .strictObject({
        kerf: opt('kerf'),
        rip: opt('kerf'),
        cross: opt('kerf'),
        planing: opt('planing'),
        dressing: opt('planing'),
        shaving: opt('planing'),
        trim: z.strictObject({ head: opt('trim'), tail: opt('trim') }).optional(),
        shortest: opt('rule'),
        narrowest: opt('rule'),
        deepest: opt('deepest'),
        long: opt('long'),
        keep: opt('rule'),
      })
      .optional(),
    spare: percent(200, 'percent of the slats').optional(),
    finish: z
      .strictObject({
        kind: z.enum(['penetrating', 'film', 'none']).optional(),
        coats: whole({ from: 0, to: 10, why: 'more than ten coats is another trade' }).optional(),
        name: text(60).optional(),
      })
      .optional(),
    paper: z
      .strictObject({
        sheets: z.enum(['A4', 'A3', 'A2', 'Letter', 'Tabloid', 'ARCH C']).optional(),
        sticks: z.enum(['A4', 'A3', 'Letter', 'Legal', 'Tabloid', 'roll 610', 'roll 914']).optional(),
        margin: opt('margin'),
        printed: z
          .strictObject({
            across: amount({ from: 90, to: 110, why: 'percent; past 10 % the printer scaled the page' }).optional(),
            along: amount({ from: 90, to: 110, why: 'percent; past 10 % the printer scaled the page' }).optional(),
          })
          .optional(),
      })
      .optional(),
  }) as unknown as z.ZodType<JobFile>;
}

/**
 * JSON Schema (draft 2020-12) of a job file, from the same source that reads it. Lengths may be numbers in the job's
 * unit or text; `unit` is the one in which their bounds are told.
 */
export function jobSchema(unit: Unit = 'in'): Record<string, unknown> {
  return z.toJSONSchema(jobFileSchema(unit), { io: 'input', unrepresentable: 'any' }) as Record<string, unknown>;
}
