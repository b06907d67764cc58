import { cutSheets, type Layout, partsTable, sawWork, shoppingTable } from '@wattlewright/drafting';
import { amountText, BOARD_FOOT, hardwareList, massOf } from '@wattlewright/model';
import type { Settled } from '../settled.ts';
import { weightText } from './amounts.ts';
import { type Page, sheetsOf, textRoom } from './page.ts';
