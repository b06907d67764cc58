import { type LengthError, parseLength, readJob, type Unit, woodNames } from '@wattlewright/model';
import { stringify } from 'yaml';
import type { World } from './world.ts';

/** Asks a person for what a job needs and gives the job file's text. */
export async function askForJob(world: Pick<World, 'ask' | 'say' | 'today'>): Promise<string> {
  const ask = async <T>(question: string, read: (answer: string) => T | string): Promise<T> => {
    for (;;) {
      const value = read(await world.ask(question));
      if (typeof value !== 'string' || !value.startsWith('!')) return value as T;
      world.say(`  ${value.slice(1)}`);
    }
  };
  const words = (answer: string) => answer || '!some words, please';
  const job = await ask('What is the job called? ', words);
  const unit = await ask('Inches or millimetres (in, mm)? ', (answer) =>
    answer === 'in' || answer === 'mm' ? answer : '!in or mm, please',
  );
  const name = await ask('What is the panel called (such as Window screen)? ', words);
  const use = await ask('What is it: screen, guard, divider or gate? ', (answer) =>
    ['screen', 'guard', 'divider', 'gate'].includes(answer) ? answer : '!one of screen, guard, divider, gate',
  );
  const measured = await ask(
    'Do you know the outside size of the frame, or the opening it goes in (size, opening)? ',
    (answer) => (answer === 'size' || answer === 'opening' ? answer : '!size or opening, please'),
  );
  const width = await ask(`Width (such as ${unit === 'in' ? '44 1/2' : '1130'})? `, lengthIn(unit as Unit));
  const height = await ask(`Height (such as ${unit === 'in' ? '52' : '1320'})? `, lengthIn(unit as Unit));
  const wood = await ask('Which wood (empty for western redcedar)? ', (answer) =>
    answer === ''
      ? 'western redcedar'
      : (woodNames.find((known) => known.toLowerCase() === answer.toLowerCase()) ??
        `!not in the table; it has ${woodNames.join(', ')}`),
  );
  const text = `# Everything not said here has a default, listed in the packet as "assumed".\n${stringify({
    job,
    unit,
    date: world.today(),
    panels: [{ name, use, [measured]: { width: plain(width), height: plain(height) }, wood }],
  })}`;
  readJob(text);
  return text;
}

function plain(answer: string): string | number {
  return /^\d+(\.\d+)?$/.test(answer) ? Number(answer) : answer;
}

function lengthIn(unit: Unit): (answer: string) => string {
  return (answer) => {
    try {
      return parseLength(answer, unit) > 0 ? answer : '!more than nothing, please';
    } catch (error) {
      return `!${(error as LengthError).message}`;
    }
  };
}
