import { INCH } from '../length.ts';
import { poundForce } from '../wood/inchpound.ts';

/** A figure of a model code, mm or N, with where it stands. The local code and a licensed professional decide. */
export interface CodeFigure {
  readonly value: number;
  readonly source: string;
}

const from = (inches: number, source: string): CodeFigure => ({ value: inches * INCH, source });

/** Figures for guards. Model codes; a place may have another edition, amend it, or use a different code. */
export const GUARD_CODE: {
  readonly drop: CodeFigure;
  readonly height: CodeFigure;
  readonly heightElsewhere: CodeFigure;
  readonly sphere: CodeFigure;
  readonly topLoad: CodeFigure;
  readonly infillLoad: CodeFigure;
  readonly infillSide: CodeFigure;
  readonly lineLoad: CodeFigure;
} = {
  drop: from(30, 'IRC (2018) R312.1.1; IBC (2021) 1015.2'),
  height: from(36, 'IRC (2018) R312.1.2'),
  heightElsewhere: from(42, 'IBC (2021) 1015.3'),
  sphere: from(4, 'IRC (2018) R312.1.3; IBC (2021) 1015.4'),
  topLoad: { value: 200 * poundForce, source: 'IRC (2018) Table R301.5' },
  infillLoad: { value: 50 * poundForce, source: 'IRC (2018) Table R301.5, footnote' },
  infillSide: from(12, 'IRC (2018) Table R301.5, footnote: one square foot'),
  lineLoad: { value: (50 * poundForce) / (12 * INCH), source: 'ASCE 7-16, 4.5.1.1 (from memory)' },
};

/** Figures for pool barriers and their gates. */
export const POOL_CODE: {
  readonly height: CodeFigure;
  readonly bottomGap: CodeFigure;
  readonly horizontals: CodeFigure;
  readonly latch: CodeFigure;
} = {
  height: from(48, 'ISPSC (2018) 305.2'),
  bottomGap: from(2, 'ISPSC (2018) 305.2.1'),
  horizontals: from(45, 'ISPSC (2018) 305.2.5'),
  latch: from(54, 'ISPSC (2018) 305.3.3'),
};

/** Square feet in mm². */
const SQUARE_FOOT = (12 * INCH) ** 2;

/** Figures for escape openings of rooms that people sleep in: area in mm², sides in mm. */
export const ESCAPE_CODE: {
  readonly area: CodeFigure;
  readonly height: CodeFigure;
  readonly width: CodeFigure;
  readonly release: string;
} = {
  area: { value: 5.7 * SQUARE_FOOT, source: 'IRC (2018) R310.2.1' },
  height: from(24, 'IRC (2018) R310.2.1'),
  width: from(20, 'IRC (2018) R310.2.1'),
  release: 'IRC (2018) R310.4; (2021) R310.4.4',
};
