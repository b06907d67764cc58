import { inspect } from 'node:util';
import * as drafting from '@wattlewright/drafting';
import * as model from '@wattlewright/model';
import * as packet from '@wattlewright/packet';

/** A fenced piece of a document. */
export interface Fence {
  readonly language: string;
  readonly text: string;
  /** Line of the fence in its document, from 1. */
  readonly line: number;
}

/** What a snippet says of a value against what the value is. */
export interface Claim {
  readonly claim: string;
  readonly is: string;
}

/** The fenced pieces of a Markdown text. */
export function fencesOf(markdown: string): Fence[] {
  return [...markdown.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].map(([, language = '', text = ''], i, all) => ({
    language,
    text,
    line: markdown.slice(0, all[i]?.index).split('\n').length,
  }));
}

const packages: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  '@wattlewright/model': model,
  '@wattlewright/drafting': drafting,
  '@wattlewright/packet': packet,
};

// biome-ignore lint/complexity/useArrowFunction: an arrow function has no constructor of its own kind
const AsyncFunction = async function () {}.constructor as new (...words: string[]) => (...values: unknown[]) => unknown;

/**
 * Runs a snippet and gives every `// → value` in it with what the expression before it came to. A snippet is plain
 * JavaScript with named imports of the packages; a claim and its expression stand on one line.
 */
export async function runSnippet(text: string): Promise<Claim[]> {
  const body = text
    .replace(/import\s*\{([^}]*)\}\s*from\s*'([^']+)';/g, 'const {$1} = load("$2");')
    .replace(/^(\s*)(?:(?:const|let) (\w+) = )?(.+?);? \/\/ → (.+)$/gm, (_, indent, name, expression, claim) => {
      const told = JSON.stringify(claim);
      return name
        ? `${indent}const ${name} = ${expression}; claim(${told}, ${name});`
        : `${indent}claim(${told}, ${expression});`;
    });
  const claims: Claim[] = [];
  const load = (name: string) => {
    const found = packages[name];
    if (!found) throw new Error(`no package ${name}`);
    return found;
  };
  const claim = (said: string, value: unknown) =>
    claims.push({ claim: said, is: inspect(value, { breakLength: Number.POSITIVE_INFINITY, depth: 5 }) });
  await new AsyncFunction('load', 'claim', body)(load, claim);
  return claims;
}

/** An example in a comment of a source file: an expression and what it gives. */
export interface Example {
  readonly expression: string;
  readonly claim: string;
}

/** The `@example` comments of a source that claim a value: a number, which may be rounded, or a text in quotes. */
export function examplesOf(source: string): Example[] {
  return [...source.matchAll(/@example\s([\s\S]*?)(?=\n\s*\* @|\*\/)/g)].flatMap(([, comment = '']) => {
    const text = comment
      .replace(/^\s*\* ?/gm, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    const found = /^(.*?) \/\/ → (-?[\d.]+|'[^']*')/.exec(text);
    return found ? [{ expression: found[1] as string, claim: found[2] as string }] : [];
  });
}

/** Whether a value is what was claimed, as far as it was written out. */
export function agrees(claim: string, value: unknown): boolean {
  if (claim.startsWith("'")) return claim.slice(1, -1) === value;
  const digits = claim.split('.')[1]?.length ?? 0;
  return typeof value === 'number' && Math.abs(value - Number(claim)) <= 0.5 * 10 ** -digits * 1.0001;
}
