import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { pointsOf } from '../src/ink.ts';
import { joinPaths } from '../src/machine.ts';
import type { Drawing, Mark, Path } from '../src/mark.ts';
import { stroke, write } from '../src/mark.ts';
import { circle, line, polyline, rectangle } from '../src/path.ts';
import { toSvg } from '../src/svg.ts';
import { readSvg } from './support/readers.ts';
import { sampleDrawing, sampleSheet } from './support/samples.ts';

interface Tag {
  readonly name: string;
  readonly at: Readonly<Record<string, string>>;
}

function tags(svg: string): Tag[] {
  const out: Tag[] = [];
  const parser = new SaxesParser();
  parser.on('opentag', ({ name, attributes }) => out.push({ name, at: attributes as Record<string, string> }));
  parser.write(svg).close();
  return out;
}

describe('toSvg writes a document', () => {
  const svg = toSvg(sampleSheet());
  test('toSvg(sheet) is true millimetres, viewBox alike', () => {
    const { attributes } = readSvg(svg);
    expect(attributes).toMatchObject({ width: '130mm', height: '100mm', viewBox: '0 0 130 100' });
  });
  test('toSvg(drawing) shows its bounds and a millimetre round them', () => {
    const { attributes } = readSvg(toSvg(sampleDrawing()));
    expect(attributes).toMatchObject({ width: '122mm', height: '92mm', viewBox: '-1 -1 122 92' });
  });
  test('toSvg is valid XML by xmllint', async () => {
    const files = [svg, toSvg(sampleSheet(), { text: 'outlines' }), toSvg(sampleDrawing(), { machine: true })];
    const results = await Promise.all(
      files.map((contents) =>
        validateXML({ xml: [{ fileName: 'a.svg', contents }], extension: 'schema', schema: [anyXml] }),
      ),
    );
    for (const { valid, errors } of results) expect(valid, JSON.stringify(errors)).toBe(true);
  });
  test('toSvg twice gives the same text', () => expect(toSvg(sampleSheet())).toBe(svg));
  test('every id is ours and there once', () => {
    const ids = tags(svg).flatMap(({ at }) => (at.id === undefined ? [] : [at.id]));
    expect(ids).toEqual(['drawing-title', 'drawing-desc', 'sample', 'sheet']);
    const twice = sampleSheet({ figures: [...sampleSheet().figures, ...sampleSheet().figures] });
    expect(
      tags(toSvg(twice))
        .filter(({ at }) => at.id?.startsWith('sample'))
        .map(({ at }) => at.id),
    ).toEqual(['sample', 'sample-2']);
  });
  test('numbers are rounded to 1e-4 and carry no exponent', () => {
    for (const { at } of tags(svg)) expect(at.d ?? '').not.toMatch(/e|\d\.\d{5}/);
  });
  test('title and desc are said', () => {
    expect(svg).toContain('<title id="drawing-title">Sample sheet</title>');
    expect(svg).toContain('One of each kind of ink.');
  });
  test('marks keep their part', () => {
    expect(tags(svg).filter(({ at }) => at['data-part'] === 'A').length).toBe(4);
  });
  test('groups carry the role and no transform', () => {
    const groups = tags(svg).filter(({ name }) => name === 'g');
    expect(groups.some(({ at }) => at.class === 'dimension')).toBe(true);
    expect(groups.every(({ at }) => at.transform === undefined)).toBe(true);
  });
});

describe('toSvg keeps any job text as text', () => {
  const wild = [
    '</text><script>alert(1)</script>',
    ']]><!-- & -->',
    '"quotes" \'and\' <tags>',
    'control \u0000\u0001\u000b ends',
    'lone \ud800 half',
    '&amp; &#0;',
    '  spaces  kept ',
  ];
  test.each(wild)('toSvg with %j in title, alt, name, part and text', async (text) => {
    const marks: Mark[] = [
      write('note', text, [5, 5], { height: 2.5, of: text }),
      stroke('edge', line([0, 0], [1, 1]), text),
    ];
    const drawing: Drawing = { ...sampleDrawing(), name: text, title: text, alt: text, marks };
    const svg = toSvg(drawing);
    const found = await validateXML({
      xml: [{ fileName: 'a.svg', contents: svg }],
      extension: 'schema',
      schema: [anyXml],
    });
    expect(found.valid, JSON.stringify(found.errors)).toBe(true);
    expect(tags(svg).map(({ name }) => name)).not.toContain('script');
    expect(readSvg(svg).texts.length).toBe(1);
  });
});

/** A schema that takes any well-formed document: what is asked of xmllint is well-formedness. */
const anyXml = `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="http://www.w3.org/2000/svg" elementFormDefault="qualified">
<xs:element name="svg"><xs:complexType mixed="true"><xs:sequence><xs:any minOccurs="0" maxOccurs="unbounded" processContents="skip"/></xs:sequence>
<xs:anyAttribute processContents="skip" namespace="##any"/></xs:complexType></xs:element></xs:schema>`;

describe('toSvg for machines', () => {
  const square = (of: string, u: number): Mark[] => [
    stroke('edge', line([u, 10], [u + 5, 10]), of),
    stroke('edge', line([u + 5, 20], [u + 5, 10]), of),
    stroke(
      'edge',
      polyline([
        [u + 5, 20],
        [u, 20],
        [u, 10],
      ]),
      of,
    ),
  ];
  const drawing: Drawing = {
    ...sampleDrawing(),
    scale: 0.1,
    marks: [...square('A', 10), ...square('B', 15), write('note', 'a note', [3, 3], { height: 2.5 })],
    bounds: { u0: 5, v0: 5, u1: 45, v1: 30 },
  };
  const svg = toSvg(drawing, { machine: true });
  test('toSvg(1:10, machine) is ten times as large, from the corner', () => {
    expect(readSvg(svg).attributes).toMatchObject({ width: '400mm', height: '250mm', viewBox: '0 0 400 250' });
    const [first = []] = readSvg(svg).paths;
    expect([Math.min(...first), Math.max(...first)]).toEqual([50, 150]);
  });
  test('each edge is one closed path, notes are left out, one group a role', () => {
    const paths = tags(svg).filter(({ name }) => name === 'path');
    expect(paths.map(({ at }) => at['data-part'])).toEqual(['A', 'B']);
    for (const { at } of paths) expect(at.d?.match(/M/g)?.length === 1 && at.d.endsWith('Z')).toBe(true);
    expect(tags(svg).filter(({ name, at }) => name === 'g' && at.class === 'edge').length).toBe(1);
    expect(svg).not.toContain('<text');
  });
  test('a full-size drawing keeps its labels, as outlines without a font', () => {
    const stick: Drawing = { ...drawing, scale: 1, marks: [write('label', '44 1⁄2', [9, 9], { height: 2.5 })] };
    const full = toSvg(stick, { machine: true });
    expect(full).not.toContain('font');
    expect(readSvg(full).paths.length).toBe(1);
  });
});

describe('toSvg with outlines', () => {
  test('letters are as high as said: the H of 3.5 mm', () => {
    const marks = [write('note', 'H', [10, 20], { height: 3.5 })];
    const [path = []] = readSvg(toSvg({ ...sampleDrawing(), marks }, { text: 'outlines' })).paths;
    const heights = path.filter((_, i) => i % 2 === 1);
    expect(Math.max(...heights)).toBeCloseTo(20, 3);
    expect(Math.min(...heights)).toBeCloseTo(16.5, 3);
  });
  test('no text and no font is left', () => {
    expect(toSvg(sampleSheet(), { text: 'outlines' })).not.toMatch(/<text|@font-face/);
  });
});

describe('joinPaths', () => {
  test('joinPaths drops a line that is there twice, either way round', () => {
    expect(joinPaths([line([0, 0], [5, 0]), line([5, 0], [0, 0]), line([0, 0], [5, 0])])).toEqual([
      line([0, 0], [5, 0]),
    ]);
  });
  test('joinPaths joins nothing where three lines meet', () => {
    const tee = [line([0, 0], [5, 0]), line([5, 0], [9, 0]), line([5, 0], [5, 9])];
    expect(joinPaths(tee).length).toBe(3);
  });
  test('joinPaths leaves closed paths closed', () => {
    const closed: Path[] = [rectangle({ u0: 0, v0: 0, u1: 4, v1: 4 }), circle([9, 9], 2)];
    expect(joinPaths(closed)).toEqual(closed);
  });
  test('joinPaths of a ring of curves comes back to its start', () => {
    const ring = circle([0, 0], 10);
    const quarters = ring
      .slice(1, -1)
      .map((step, i): Path => [['M', ...(pointsOf([ring[i] ?? step]).at(-1) ?? [0, 0])], step]);
    const [joined, ...rest] = joinPaths([...quarters].reverse());
    expect(rest).toEqual([]);
    expect(joined?.at(-1)).toEqual(['Z']);
    expect(joined?.filter(([letter]) => letter === 'C').length).toBe(12);
  });
});
