/** Numbers from 0 to 1, the same in every run (Park and Miller, Communications of the ACM 31, 1988). */
export function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
