import { describe, expect, it } from 'vitest';
import { view, viewBox } from '../src/view.ts';

describe('view', () => {
  it('view(0.1) puts x to the right and y upward on paper', () => {
    expect(view(0.1)(100, 50)).toEqual([10, -5]);
  });

  it('view(1, [20, 30]) puts the panel origin at its place on paper', () => {
    const at = view(1, [20, 30]);
    expect(at(0, 0)).toEqual([20, 30]);
    expect(at(5, 5)).toEqual([25, 25]);
  });

  it('viewBox takes opposite corners in any order', () => {
    const at = view(0.5);
    expect(viewBox(at, [0, 0], [10, 20])).toEqual({ u0: 0, v0: -10, u1: 5, v1: 0 });
    expect(viewBox(at, [10, 20], [0, 0])).toEqual(viewBox(at, [0, 0], [10, 20]));
  });
});
