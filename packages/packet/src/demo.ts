import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

// `npm run packet` makes the default example; `npm run packet -- path/to/job.yaml` any other. Both end in out/.
const root = fileURLToPath(new URL('../../..', import.meta.url));
const [job = join(root, 'examples', 'tern-hollow-window.yaml'), ...rest] = process.argv.slice(2);
const script = fileURLToPath(new URL('main.ts', import.meta.url));
process.argv = [
  process.argv[0] as string,
  join(dirname(script), 'main.ts'),
  'packet',
  job,
  '--out',
  join(root, 'out'),
  ...rest,
];
await import('./main.ts');
