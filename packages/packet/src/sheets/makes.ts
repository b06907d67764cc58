import type { ViewMaker } from '@wattlewright/drafting';
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

/** Panels alike in all but their names, which share their sheets. */
export type Alike = readonly [Panel, ...Panel[]];

/** Panels with one key together, in the order of the first ones. */
export function grouped(panels: readonly Panel[], keyOf: (panel: Panel) => string): Alike[] {
  const groups = new Map<string, Alike>();
  for (const panel of panels) {
    const group = groups.get(keyOf(panel));
    groups.set(keyOf(panel), group ? [...group, panel] : [panel]);
  }
  return [...groups.values()];
}

/** A view of the first of some panels alike, titled with the names of all. */
export function namedAfterAll(view: ViewMaker, alike: Alike): ViewMaker {
  const [{ name }] = alike;
  return {
    ...view,
    make: (scale) => {
      const drawing = view.make(scale);
      return { ...drawing, title: drawing.title.replace(name, () => namesText(alike)) };
    },
  };
}
