import { type Layer, layers } from './pen.ts';

/** An object of the PDF being made. */
interface Reference {
  readonly data: Record<string, unknown>;
  end(): void;
}

/**
 * What pdfkit keeps inside that these functions write to, since it has no call of its own for layers, page labels and
 * the request not to scale. Tests read each of them back with other readers, so that a change of pdfkit shows.
 */
export interface Catalogued {
  readonly _root: Reference;
  ref(data: Record<string, unknown>): Reference;
  addContent(operator: string): unknown;
  readonly page: { readonly resources: Reference };
}

// pdfkit writes String objects as PDF strings and bare strings as PDF names.
const text = (s: string): object => Object(s) as object;

/** Asks the reader's viewer to print at actual size, one sheet of paper a page. ISO 32000-1, table 150. */
export function askFullSize(doc: Catalogued): void {
  const preferences = doc._root.data.ViewerPreferences as Reference;
  Object.assign(preferences.data, {
    PrintScaling: 'None',
    PickTrayByPDFSize: true,
    Duplex: 'Simplex',
    Enforce: ['PrintScaling'],
  });
}

/** Gives each page its own label. ISO 32000-1, 12.4.2. */
export function labelPages(doc: Catalogued, labels: readonly string[]): void {
  doc._root.data.PageLabels = { Nums: labels.flatMap((label, i) => [i, { P: text(label) }]) };
}

/** Layers that a reader can switch off: optional content groups, all on. ISO 32000-1, 8.11. */
export interface Layers {
  /** Makes the layers known to the current page. */
  addToPage(): void;
  /** Runs `draw`, its ink on the layer. */
  on(layer: Layer, draw: () => void): void;
  /** Writes the groups; to be called once, after the last page. */
  finish(): void;
}

/** Sets up the layers of a document. */
export function layersOf(doc: Catalogued): Layers {
  const groups = new Map<Layer, Reference>();
  for (const layer of layers) groups.set(layer, doc.ref({ Type: 'OCG', Name: text(layer) }));
  const all = [...groups.values()];
  doc._root.data.OCProperties = { OCGs: all, D: { ON: all, Order: all, Name: text('Layers') } };
  const name = (layer: Layer): string => `L${layers.indexOf(layer)}`;
  return {
    addToPage(): void {
      doc.page.resources.data.Properties = Object.fromEntries([...groups].map(([layer, ref]) => [name(layer), ref]));
    },
    on(layer: Layer, draw: () => void): void {
      doc.addContent(`/OC /${name(layer)} BDC`);
      draw();
      doc.addContent('EMC');
    },
    finish(): void {
      for (const group of all) group.end();
    },
  };
}
