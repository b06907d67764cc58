interface Page {
  readonly Node: unknown;
  readonly document: {
    readonly implementation: { createDocument(namespace: string, name: string, type: null): object };
  };
}

/** A fresh window whose document is an empty SVG document, for the SVG writer: here the browser's own. */
export function emptyWindow(): { readonly Node: unknown; readonly document: object } {
  const page = globalThis as unknown as Page;
  // An XML document of its own, so that what is written is XML and the page that runs this is not touched.
  const document = page.document.implementation.createDocument('http://www.w3.org/2000/svg', 'svg', null);
  return { Node: page.Node, document };
}
