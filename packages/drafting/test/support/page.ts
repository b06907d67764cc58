import { toPdf, toSvg } from '../../src/index.ts';
import { sampleSheet } from './samples.ts';

/** What the page in the browser makes: the sample as SVG and as PDF bytes. */
export async function make(): Promise<{ svg: string; pdf: number[] }> {
  const pdf = await toPdf([sampleSheet()], { title: 'Browser', compress: false });
  return { svg: toSvg(sampleSheet()), pdf: [...pdf] };
}

Object.assign(globalThis, { make });
