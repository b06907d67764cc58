import type { YAMLError } from 'yaml';
import type { Problem } from './problem.ts';

/** What keeps a text from being YAML, by the code of the reader, in words for whoever wrote it. */
const WORDS: Readonly<Partial<Record<YAMLError['code'], string>>> = {
  BAD_INDENT: 'this line does not line up with its group, or a bracket or brace before it is not closed',
  BLOCK_AS_IMPLICIT_KEY:
    'a second field in one line, or one that does not line up with its group: put each on a line of its own or all in { } with commas, and text that has a colon in quotes',
  BLOCK_IN_FLOW: 'a bracket or brace before this line is not closed',
  DUPLICATE_KEY: 'this field stands twice in its group',
  MISSING_CHAR: 'a quote, comma, bracket or brace is missing',
  MULTILINE_IMPLICIT_KEY: 'a colon is missing after this field, or the line does not line up with its group',
  TAB_AS_INDENT: 'a tab before the field: indent by spaces',
  UNEXPECTED_TOKEN:
    'more stands here than the value before it: inches and quotes inside a text want the other kind of quotes round it',
  BAD_SCALAR_START: 'text that starts with a sign of YAML wants quotes',
};

/** Where a text stops being YAML: the first place, since what follows it mostly comes of it, and every field told twice. */
export function notYaml(errors: readonly YAMLError[], text: string): Problem[] {
  const inOrder = [...errors].sort((a, b) => a.pos[0] - b.pos[0]);
  const broken = inOrder.find(({ code }) => code !== 'DUPLICATE_KEY');
  return inOrder
    .filter((error) => error === broken || error.code === 'DUPLICATE_KEY')
    .map(({ code, linePos, message }) => {
      const [at] = linePos ?? [];
      const line = at ? (text.split('\n')[at.line - 1] ?? '').trim() : '';
      return {
        ...(at ? { line: at.line, column: at.col } : {}),
        path: '',
        found: line.length > 60 ? `${line.slice(0, 57)}...` : line,
        message: `not YAML: ${WORDS[code] ?? message.split(' at line')[0]}`,
      };
    });
}
