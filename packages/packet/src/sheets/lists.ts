import type { Layout } from '@wattlewright/drafting';
import type { Settled } from '@wattlewright/model';
import type { Page } from './page.ts';

export function listSheets(_: Settled, __: Page): Layout[] {
  return [];
}
