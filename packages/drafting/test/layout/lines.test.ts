import { describe, expect, it } from 'vitest';
import { held, lines } from '../../src/layout/lines.ts';

describe('held', () => {
  it.each([
    ['1 1⁄2', '1\u00a01⁄2'],
    ['cut 44 1/2 long', 'cut 44\u00a01/2 long'],
    ['12 mm deep', '12\u00a0mm deep'],
    ['3 inches', '3 inches'],
    ['2 staves', '2 staves'],
  ])('%s', (text, expected) => {
    expect(held(text)).toBe(expected);
  });
});

describe('lines', () => {
  it('breaks at the line ends of the text itself', () => {
    expect(lines('one\ntwo', 100)).toEqual(['one', 'two']);
  });

  it('takes a size over to the next line whole', () => {
    expect(lines('groove to 1 1⁄2', 20)).toEqual(['groove to', '1\u00a01⁄2']);
  });
});
