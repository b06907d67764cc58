import { parseArgs } from 'node:util';
import { JobError, problemText } from '@wattlewright/model';
import { commands } from './commands.ts';
import { FolderError } from './folder.ts';
import { STATUS, UsageError } from './status.ts';
import type { World } from './world.ts';

const HELP = `wattlewright: from a measured opening to a woven panel you can build

  wattlewright start                        asks a few questions and writes a job file
  wattlewright packet JOB --out FOLDER      writes the whole shop packet: drawings, lists, cuts, sticks
  wattlewright check JOB [--json]           says what you must know before you build
  wattlewright plan JOB [--json]            says what to buy and how to cut it
  wattlewright sticks JOB --out FILE.pdf    full-size marking sticks and templates to print
  wattlewright draw JOB VIEW [--svg|--pdf]  one view (draw JOB without a view lists them)
  wattlewright woods JOB                    the same panel in every wood of the table
  wattlewright schema                       the job file's JSON Schema, for editors

JOB is a job file (YAML or JSON). Results go to standard output, or to the place after --out.
Ends with 0 when all is well, 1 when a finding says stop, 2 when the job or the call can't be read, 3 when the disk fails.
A full-size sheet is only true when printed at actual size: measure the check bar on it first.
`;

/** Runs one call of the command and gives its exit status. */
export async function run(world: World): Promise<number> {
  const [name = '', ...rest] = world.args;
  if (['', 'help', '--help', '-h'].includes(name)) {
    world.out(HELP);
    return name === '' ? STATUS.unreadable : STATUS.fine;
  }
  const command = commands[name];
  if (!command) {
    world.say(
      `wattlewright: no command ${JSON.stringify(name)}; try one of ${Object.keys(commands).join(', ')}, or --help`,
    );
    return STATUS.unreadable;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    world.out(`${command.usage}\n  ${command.about}\n`);
    return STATUS.fine;
  }
  try {
    const { values, positionals } = parseArgs({
      args: rest,
      options: command.options,
      allowPositionals: true,
      strict: true,
    });
    return await command.run({
      world,
      values: values as Record<string, string | boolean | undefined>,
      words: positionals,
    });
  } catch (error) {
    return failed(error, world, command.usage);
  }
}

async function failed(error: unknown, world: World, usage: string): Promise<number> {
  if (error instanceof JobError) {
    for (const problem of error.problems) world.say(problemText(problem, fileOf(world)));
    world.say(
      `wattlewright: ${error.problems.length} ${error.problems.length === 1 ? 'problem' : 'problems'}; nothing was written`,
    );
    return STATUS.unreadable;
  }
  const message = error instanceof Error ? error.message : String(error);
  const code = (error as { code?: unknown } | null)?.code;
  if (error instanceof UsageError || (typeof code === 'string' && code.startsWith('ERR_PARSE_ARGS'))) {
    world.say(`wattlewright: ${message.split('. ')[0]}`);
    world.say(`usage: ${usage}`);
    return STATUS.unreadable;
  }
  if (code === 'ENOENT' && message.includes(`open '${fileOf(world)}'`)) {
    world.say(`wattlewright: there is no file ${fileOf(world)}; give the path of a job file`);
    return STATUS.unreadable;
  }
  if (error instanceof FolderError || typeof code === 'string') {
    world.say(`wattlewright: ${message}`);
    return code === 'ENOENT' && message.includes('open') ? STATUS.unreadable : STATUS.machine;
  }
  throw error;
}

function fileOf({ args }: World): string {
  return args.slice(1).find((word) => !word.startsWith('-')) ?? '';
}
