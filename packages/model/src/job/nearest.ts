/**
 * The word of `allowed` that a misspelt one most likely stands for, or nothing where none is near: at most one edit for
 * every three letters, counting swaps of neighbours as one (Damerau's distance, restricted form).
 */
export function nearestWord(word: string, allowed: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of allowed) {
    const distance = edits(word.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

function edits(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(
        (last[j] as number) + 1,
        (row[j - 1] as number) + 1,
        (last[j - 1] as number) + (same ? 0 : 1),
      );
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, (before[j - 2] as number) + 1);
      }
      row.push(cost);
    }
    before = last;
    last = row;
  }
  return last[b.length] as number;
}
