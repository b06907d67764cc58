import type { Box } from '../mark.ts';

/** Boxes found by place: which of them may lie near another box. */
export interface Grid {
  /** Indices, rising and once each, of boxes whose cells the box touches. */
  near(box: Box): number[];
}

/** Side of a cell, mm: about the length of a short label. */
const cell = 12;

/** Puts boxes into cells, so that each is compared with its neighbours and not with all others. */
export function gridOf(boxes: readonly Box[]): Grid {
  const cells = new Map<string, number[]>();
  const keys = ({ u0, v0, u1, v1 }: Box): string[] => {
    const out: string[] = [];
    for (let i = Math.floor(u0 / cell); i <= Math.floor(u1 / cell); i++) {
      for (let j = Math.floor(v0 / cell); j <= Math.floor(v1 / cell); j++) out.push(`${i} ${j}`);
    }
    return out;
  };
  boxes.forEach((box, index) => {
    for (const key of keys(box)) {
      const list = cells.get(key);
      if (list) list.push(index);
      else cells.set(key, [index]);
    }
  });
  return {
    near(box: Box): number[] {
      const found = new Set<number>();
      for (const key of keys(box)) for (const index of cells.get(key) ?? []) found.add(index);
      return [...found].sort((a, b) => a - b);
    },
  };
}
