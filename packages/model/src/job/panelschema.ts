import { z } from 'zod';
import type { Unit } from '../length.ts';
import { amount, grade, length, type SizeKind, shorthand, text, whole } from './bounds.ts';
import { UNCUT } from './job.ts';

const weaveName = z.enum([
  'plain',
  'two-over-two twill',
  'two-over-two basket',
  'two-over-one twill',
  'paired courses',
]);

const member = shorthand(
  text(),
  (wood) => ({ wood }),
  z.strictObject({
    wood: text().optional(),
    grade: grade.optional(),
    rings: amount({ from: 0, to: 90, why: 'rings lie between flat sawn (0) and quarter sawn (90 degrees)' }).optional(),
  }),
);

/** The zod source of one panel of a job file: everything optional, lengths to mm. */
export function panelSchema(unit: Unit): z.ZodObject {
  const mm = (kind: SizeKind) => length(unit, kind);
  const opt = (kind: SizeKind) => mm(kind).optional();
  return z.strictObject({
    name: text(60).optional(),
    use: z.enum(['screen', 'guard', 'divider', 'gate']).optional(),
    count: whole({ from: 1, to: 500, why: 'a job makes up to 500 of one panel' }).optional(),
    size: z.strictObject({ width: mm('outside'), height: mm('outside') }).optional(),
    opening: z
      .strictObject({
        width: mm('opening'),
        height: mm('opening'),
        gap: z
          .strictObject({ sides: opt('gap'), left: opt('gap'), right: opt('gap'), top: opt('gap'), bottom: opt('gap') })
          .optional(),
      })
      .optional(),
    fit: z
      .discriminatedUnion('vary', [
        z.strictObject({
          vary: z.literal('slats'),
          from: opt('slatHeight'),
          to: opt('slatHeight'),
          prefer: opt('slatHeight'),
          step: opt('step'),
        }),
        z.strictObject({ vary: z.literal('outside'), go: z.enum(['up', 'down', 'nearest']).optional() }),
        z.strictObject({ vary: z.literal('gaps'), from: opt('gap'), to: opt('gap') }),
      ])
      .optional(),
    rail: z.strictObject({ height: opt('section'), depth: opt('section') }).optional(),
    stile: z.strictObject({ width: opt('section'), depth: opt('section') }).optional(),
    groove: z.strictObject({ depth: opt('grooveDepth'), clearance: opt('clearance') }).optional(),
    stave: z
      .strictObject({
        width: opt('staveSide'),
        depth: opt('staveSide'),
        clearance: opt('clearance'),
        count: whole({ from: 2, to: 200, why: 'a weave needs two end staves, and 200 is past any panel' }).optional(),
        pitch: z.strictObject({ from: opt('pitch'), to: opt('pitch'), prefer: opt('pitch') }).optional(),
      })
      .optional(),
    slat: z
      .strictObject({ thickness: opt('slatThickness'), height: opt('slatHeight'), stop: opt('section') })
      .optional(),
    top: z.strictObject({ allowance: opt('allowance'), cover: opt('allowance') }).optional(),
    weave: shorthand(
      weaveName,
      (pattern) => ({ pattern }),
      z.strictObject({
        pattern: weaveName.optional(),
        rows: z
          .array(z.string().regex(/^[+-]{1,200}$/, 'expected a row of + (in front) and - (behind)'))
          .min(1, 'expected at least one row')
          .max(400, 'expected at most 400 rows')
          .optional(),
        start: z.enum(['front', 'behind']).optional(),
      }),
    ).optional(),
    wood: shorthand(
      text(),
      (wood) => ({ all: { wood } }),
      z.strictObject({
        all: member.optional(),
        rail: member.optional(),
        stile: member.optional(),
        stave: member.optional(),
        slat: member.optional(),
      }),
    ).optional(),
    measured: z
      .strictObject({
        stack: mm('outside'),
        thickness: opt('slatThickness'),
        broken: whole({ from: 0, to: 10000, why: 'pieces broken are counted' }).optional(),
        uncut: z.array(z.enum(UNCUT)).optional(),
      })
      .optional(),
    screen: z
      .strictObject({
        mounting: z.enum(['stiles', 'blocks', 'posts']).optional(),
        standoff: opt('gap'),
        glass: opt('gap'),
        bedroom: z.boolean().optional(),
        above: opt('height'),
        into: z.enum(['wood', 'masonry']).optional(),
      })
      .optional(),
    guard: z
      .strictObject({
        floor: opt('gap'),
        drop: opt('height'),
        cap: z.strictObject({ height: mm('section'), depth: mm('section') }).optional(),
        top: opt('height'),
        dwelling: z.enum(['one or two family', 'other']).optional(),
      })
      .optional(),
    divider: z
      .strictObject({
        stand: z.enum(['feet', 'track']).optional(),
        feet: z.strictObject({ length: opt('outside'), height: opt('section'), width: opt('section') }).optional(),
        track: z.strictObject({ above: opt('gap'), below: opt('gap') }).optional(),
      })
      .optional(),
    gate: z
      .strictObject({
        hinge: z.enum(['left', 'right']).optional(),
        swing: z.enum(['towards the front', 'towards the back']).optional(),
        clear: z.strictObject({ hinge: opt('gap'), latch: opt('gap'), ground: opt('gap') }).optional(),
        brace: z
          .strictObject({
            kind: z.enum(['cable', 'strut', 'none']).optional(),
            from: z.enum(['hinge top', 'hinge bottom']).optional(),
          })
          .optional(),
        hinges: z
          .strictObject({
            count: whole({ from: 2, to: 4, why: 'a leaf hangs on two to four hinges' }).optional(),
            inset: opt('gap'),
          })
          .optional(),
        latch: opt('height'),
        load: amount({ from: 0, to: 5000, why: 'newtons at the latch; a person leaning is under 1000' }).optional(),
        pool: z.boolean().optional(),
      })
      .optional(),
  });
}
