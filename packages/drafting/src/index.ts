// Ink: marks, how roles look, and lettering measured in the embedded font.
export { boxOf, moved, place, type Placement, pointsOf, union } from './ink.ts';
export {
  type Anchor,
  type Box,
  type Chain,
  type Drawing,
  type Figure,
  type Mark,
  type Path,
  type PathMark,
  type Point,
  type Role,
  type Sheet,
  type Step,
  stroke,
  type TextMark,
  write,
} from './mark.ts';
export { arc, circle, curve, line, polygon, polyline, rectangle } from './path.ts';

// Layout: scales and the map to paper; sizes, notes, hatches, tables and text as ink.
export { balloon, cuttingPlane, detailCircle } from './layout/balloon.ts';
export { contains, grown, overlaps } from './layout/clearance.ts';
export { type DimensionOptions, dimensionRows } from './layout/dimension.ts';
export { type Grain, type HatchOptions, hatch } from './layout/hatch.ts';
export { leader, type Notes, type NotesOptions, type NoteTarget, placeNotes, textBoxes } from './layout/notes.ts';
export type { FigureRow } from './layout/figurelist.ts';
export { type Block, type ProseOptions, prosePages } from './layout/prose.ts';
export type { Rows } from './layout/remark.ts';
export type { Size } from './layout/rows.ts';
export { dimensionSide, type RunningOptions, type RunningValue, runningRow } from './layout/running.ts';
export type { Side } from './layout/side.ts';
export { TEXT, TEXT_HEADING, TEXT_LARGE } from './layout/style.ts';
export { TooLarge } from './layout/toolarge.ts';
export { type Cell, type Picture, type TableColumn, type TableOptions, table, tablePages } from './layout/table.ts';
export {
  fitText,
  fractions,
  type Printable,
  printable,
  textBox,
  textCorners,
  textStart,
  textWidth,
  wrapText,
} from './lettering.ts';
export { fillOf, type Layer, layers, type Pen, pen, roles, thick, thin, type Weight } from './pen.ts';
export {
  type Extent,
  INCH_SCALES,
  largestScale,
  MILLIMETRE_SCALES,
  type Scale,
  scalesOf,
  standardScale,
  type Unit,
} from './scale.ts';
export { type View, view, viewBox } from './view.ts';

// Output: SVG for screens, printers and machines; PDF for printing.
export { type PdfMeta, toPdf } from './pdf.ts';
export { type SvgOptions, toSvg } from './svg.ts';
// Proof: is the ink itself sound?
export { proof, type ProofOptions } from './proofing/proof.ts';

// Full-size sheets: a drawing over as many pages as it needs.
export { SAFE_MARGIN, TILE_PAPERS, type TilePaper, type TilePaperName } from './paper.ts';
export { gather } from './tiling/gather.ts';
export { numberPages } from './tiling/number.ts';
export { type Printed, tile, type TileOptions } from './tiling/tile.ts';
// Sheets: views at the largest scale that fits, placed, framed and numbered.
export {
  type ArrangeOptions,
  arrange,
  arrangeLayouts,
  SHEET_PAPERS,
  type SheetPaper,
  type SheetPaperName,
} from './sheet/arrange.ts';
export { fit, type Item, titled, type ViewMaker } from './sheet/fit.ts';
export { type Frame, frame, type Orientation } from './sheet/frame.ts';
export { compose, finish, type Layout, lay, type Pane, paneBox } from './sheet/layout.ts';
export { CHECK_FIRST, type SheetMeta } from './sheet/titleblock.ts';

// Views of the whole panel: front, back, side, in its opening, picture, a run of panels, and what is said beside them.
export { elevation, elevationExtent, elevationMaker, type ElevationOptions } from './views/elevation.ts';
export { backElevation, backExtent, backMakers, hasBack, type BackOptions } from './views/back.ts';
export { openingMakers } from './views/opening.ts';
export { panelNotes, type PanelNotesOptions } from './views/panelnotes.ts';
export { partOf } from './views/partof.ts';
export { picture, pictureExtent, pictureMaker, type PictureOptions } from './views/picture.ts';
export { runElevation, runExtent, runMaker, type RunOptions } from './views/run.ts';
export { sideElevation, sideExtent, sideMaker, type SideOptions } from './views/side.ts';

// Views at full size, weave chart and plots
export { niceTicks, plot } from './views/plot.ts';
export type { Axis, Level, PlotOptions, PlotPoint, Series } from './views/plotdata.ts';
export { sightChart } from './views/sightchart.ts';
export { spacingChart } from './views/spacingchart.ts';
export type { StickOptions } from './views/stick.ts';
export { courseStick } from './views/stickcourse.ts';
export { staveStick } from './views/stickstave.ts';
export { cornerTemplate } from './views/templatecorner.ts';
export { footTemplate } from './views/templatefoot.ts';
export { railEndTemplate } from './views/templaterail.ts';
export { stileEndTemplate } from './views/templatestile.ts';
export { type WeaveChartOptions, weaveChart } from './views/weavechart.ts';
export { approval } from './views/approval.ts';

// Sections and details, with the letters of cuts and details that other views carry.
export { type DetailOptions, detail, detailExtent, detailMakers } from './views/detail.ts';
export {
  type Cuttable,
  type CutPlanes,
  cutPlanes,
  type DetailLetter,
  type DetailSubject,
  detailLetters,
} from './views/detailkey.ts';
export {
  type VerticalOptions,
  verticalSection,
  verticalSectionExtent,
  verticalSectionMaker,
} from './views/verticalsection.ts';
export {
  type SectionOptions,
  weaveBay,
  weaveBayExtent,
  weaveBayMaker,
  weaveSection,
  weaveSectionExtent,
  weaveSectionMaker,
} from './views/weavesection.ts';

// Cutting: parts list, cut sheets, order of work, shopping, yield.
export { type CutSheetOptions, cutSheets } from './views/cutsheets.ts';
export { type PartsTableOptions, partsTable } from './views/partslist.ts';
export { type SawWorkOptions, sawWork } from './views/sawwork.ts';
export { type HardwareRow, type ShoppingOptions, shoppingTable } from './views/shopping.ts';
export { type BladeRow, type YieldOptions, yieldBar } from './views/yieldbar.ts';
