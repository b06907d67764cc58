import type { Panel } from '@wattlewright/model';

/** Everything of a panel but its name, as one text: panels of one make are alike in all that is drawn and said of them. */
export function makeOf({ name: _, spec, ...panel }: Panel): string {
  const { name: __, ...rest } = spec;
  return JSON.stringify({ ...panel, spec: rest });
}

/** `Bay 1`, `Bay 1 and Bay 2`, `Bay 1, Bay 2 and Bay 3`. */
export function namesText(panels: readonly Pick<Panel, 'name'>[]): string {
  const names = panels.map(({ name }) => name);
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
