import { gravity12FromBasic } from './density.ts';
import { poundForce, psi } from './inchpound.ts';
import { coefficientFromShrinkage } from './movement.ts';
import type { Confidence, DecayGroup, Species } from './wood.ts';

/**
 * Specific gravity for fasteners by combination of woods, oven-dry mass and volume. All read.
 * Source: National Design Specification for Wood Construction (NDS 2018), Table 12.3.3A.
 */
// biome-ignore format: one row a combination
const fastenerGravity = {
  'Western cedars': 0.36,
  'Northern white cedar': 0.31,
  'Alaska yellow cedar': 0.46,
  'Redwood': 0.37,
  'Douglas fir-larch': 0.5,
  'Southern pine': 0.55,
  'Hem-fir': 0.43,
  'Ponderosa pine': 0.43,
  'Eastern white pine': 0.36,
  'Sitka spruce': 0.43,
  'Northern red oak': 0.68,
  'Red maple': 0.58,
  'Mixed oak': 0.68,
  'Beech-birch-hickory': 0.71,
} as const;

/** The wood table's columns, left to right. */
type Row = readonly [
  id: string,
  name: string,
  botanical: string,
  specificGravity12: number,
  /** MPa */
  modulus: number,
  /** MPa */
  strength: number,
  /** N */
  hardness: number,
  /** Percent, radial and tangential. */
  shrinkage: readonly [number, number],
  /** Per 1 % of moisture, radial and tangential. */
  coefficients: readonly [number, number],
  /** Percent. */
  fibreSaturation: number,
  fastenerGroup: keyof typeof fastenerGravity | null,
  /** How strength, shrinkage, coefficients and decay were come by: r read, m from memory, d derived. */
  confidence: string,
  decay: DecayGroup,
  decayRemark?: string,
];

// Strength, modulus and hardness as published in SI; teak and ipe, published in inch-pound units alone, are converted.
// White oak, northern red oak and shagbark hickory bear the coefficients of their commercial group.
// Baldcypress is in the lower of the two groups that its growth decides between.
// Western white pine: the inch-pound table prints 0.38, a copy of the metric one 0.35; 0.38 is used.
// biome-ignore format: one row a species
const softwoods: readonly Row[] = [
  ['western-redcedar', 'western redcedar', 'Thuja plicata', 0.32, 7700, 51.7, 1600, [2.4, 5], [0.00111, 0.00234], 22, 'Western cedars', 'rrmr', 'resistant'],
  ['alaska-yellow-cedar', 'Alaska yellow-cedar', 'Callitropsis nootkatensis', 0.44, 9800, 77, 2600, [2.8, 6], [0.00095, 0.00208], 30, 'Alaska yellow cedar', 'rrmr', 'resistant'],
  ['northern-white-cedar', 'northern white-cedar', 'Thuja occidentalis', 0.31, 5500, 45, 1400, [2.2, 4.9], [0.00101, 0.00229], 22, 'Northern white cedar', 'rrmr', 'resistant'],
  ['atlantic-white-cedar', 'Atlantic white-cedar', 'Chamaecyparis thyoides', 0.32, 6400, 47, 1600, [2.9, 5.4], [0.00099, 0.00187], 30, null, 'rrmr', 'resistant'],
  ['eastern-redcedar', 'eastern redcedar', 'Juniperus virginiana', 0.47, 6100, 61, 4000, [3.1, 4.7], [0.00106, 0.00162], 30, null, 'rrmr', 'resistant'],
  ['port-orford-cedar', 'Port-Orford-cedar', 'Chamaecyparis lawsoniana', 0.43, 11700, 88, 2800, [4.6, 6.9], [0.00158, 0.00241], 30, null, 'rrmr', 'resistant'],
  ['incense-cedar', 'incense-cedar', 'Calocedrus decurrens', 0.37, 7200, 55, 2100, [3.3, 5.2], [0.00112, 0.0018], 30, null, 'rrmr', 'resistant'],
  ['redwood-old', 'redwood, old growth', 'Sequoia sempervirens', 0.4, 9200, 69, 2100, [2.6, 4.4], [0.0012, 0.00205], 22, 'Redwood', 'rmmr', 'resistant'],
  ['redwood-young', 'redwood, young growth', 'Sequoia sempervirens', 0.35, 7600, 54, 1900, [2.2, 4.9], [0.00101, 0.00229], 22, 'Redwood', 'rmmm', 'moderately resistant'],
  ['baldcypress', 'baldcypress', 'Taxodium distichum', 0.46, 9900, 73, 2300, [3.8, 6.2], [0.0013, 0.00216], 30, null, 'rrmr', 'moderately resistant', 'old growth is resistant'],
  ['douglas-fir-coast', 'Douglas-fir, coast', 'Pseudotsuga menziesii', 0.48, 13400, 85, 3200, [4.8, 7.6], [0.00165, 0.00267], 30, 'Douglas fir-larch', 'rrmr', 'moderately resistant'],
  ['western-larch', 'western larch', 'Larix occidentalis', 0.52, 12900, 90, 3700, [4.5, 9.1], [0.00155, 0.00323], 30, 'Douglas fir-larch', 'rmmr', 'moderately resistant'],
  ['sitka-spruce', 'Sitka spruce', 'Picea sitchensis', 0.4, 10800, 70, 2300, [4.3, 7.5], [0.00148, 0.00263], 30, 'Sitka spruce', 'rmmr', 'slightly or nonresistant'],
  ['eastern-white-pine', 'eastern white pine', 'Pinus strobus', 0.35, 8500, 59, 1700, [2.1, 6.1], [0.00071, 0.00212], 30, 'Eastern white pine', 'rmmr', 'moderately resistant', 'old growth only'],
  ['western-white-pine', 'western white pine', 'Pinus monticola', 0.38, 10100, 67, 1900, [4.1, 7.4], [0.00141, 0.00259], 30, null, 'rmmr', 'slightly or nonresistant'],
  ['sugar-pine', 'sugar pine', 'Pinus lambertiana', 0.36, 8200, 57, 1700, [2.9, 5.6], [0.00099, 0.00194], 30, null, 'rmmr', 'slightly or nonresistant'],
  ['ponderosa-pine', 'ponderosa pine', 'Pinus ponderosa', 0.4, 8900, 65, 2000, [3.9, 6.2], [0.00133, 0.00216], 30, 'Ponderosa pine', 'rmmr', 'slightly or nonresistant'],
  ['loblolly-pine', 'loblolly pine', 'Pinus taeda', 0.51, 12300, 88, 3100, [4.8, 7.4], [0.00165, 0.00259], 30, 'Southern pine', 'rmmr', 'slightly or nonresistant'],
  ['longleaf-pine', 'longleaf pine', 'Pinus palustris', 0.59, 13700, 100, 3900, [5.1, 7.5], [0.00176, 0.00263], 30, 'Southern pine', 'rmmr', 'moderately resistant', 'old growth only'],
  ['western-hemlock', 'western hemlock', 'Tsuga heterophylla', 0.45, 11300, 78, 2400, [4.2, 7.8], [0.00144, 0.00274], 30, 'Hem-fir', 'rmmr', 'slightly or nonresistant'],
];

// biome-ignore format: one row a species
const hardwoods: readonly Row[] = [
  ['white-oak', 'white oak', 'Quercus alba', 0.68, 12300, 105, 6000, [5.6, 10.5], [0.0018, 0.00365], 30, 'Mixed oak', 'rrrr', 'resistant'],
  ['northern-red-oak', 'northern red oak', 'Quercus rubra', 0.63, 12500, 99, 5700, [4, 8.6], [0.00158, 0.00369], 30, 'Northern red oak', 'rmrr', 'slightly or nonresistant'],
  ['sugar-maple', 'sugar maple', 'Acer saccharum', 0.63, 12600, 109, 6400, [4.8, 9.9], [0.00165, 0.00353], 30, null, 'rrrr', 'slightly or nonresistant'],
  ['red-maple', 'red maple', 'Acer rubrum', 0.54, 11300, 92, 4200, [4, 8.2], [0.00137, 0.00289], 30, 'Red maple', 'rmrr', 'slightly or nonresistant'],
  ['white-ash', 'white ash', 'Fraxinus americana', 0.6, 12000, 103, 5900, [4.9, 7.8], [0.00169, 0.00274], 30, null, 'rrrr', 'slightly or nonresistant'],
  ['black-cherry', 'black cherry', 'Prunus serotina', 0.5, 10300, 85, 4200, [3.7, 7.1], [0.00126, 0.00248], 30, null, 'rrrr', 'resistant'],
  ['black-walnut', 'black walnut', 'Juglans nigra', 0.55, 11600, 101, 4500, [5.5, 7.8], [0.0019, 0.00274], 30, null, 'rrrr', 'resistant'],
  ['yellow-poplar', 'yellow-poplar', 'Liriodendron tulipifera', 0.42, 10900, 70, 2400, [4.6, 8.2], [0.00158, 0.00289], 30, null, 'rrmr', 'slightly or nonresistant'],
  ['pecan', 'pecan', 'Carya illinoinensis', 0.66, 11900, 94, 8100, [4.9, 8.9], [0.00169, 0.00315], 30, null, 'rrrr', 'slightly or nonresistant'],
  ['shagbark-hickory', 'shagbark hickory', 'Carya ovata', 0.72, 14900, 139, 8400, [7, 10.5], [0.00259, 0.00411], 30, 'Beech-birch-hickory', 'rmmr', 'slightly or nonresistant'],
  ['black-locust', 'black locust', 'Robinia pseudoacacia', 0.69, 14100, 134, 7600, [4.6, 7.2], [0.00158, 0.00252], 30, null, 'rmrr', 'very resistant'],
  ['american-beech', 'American beech', 'Fagus grandifolia', 0.64, 11900, 103, 5800, [5.5, 11.9], [0.0019, 0.00431], 30, 'Beech-birch-hickory', 'rrrr', 'slightly or nonresistant'],
  ['yellow-birch', 'yellow birch', 'Betula alleghaniensis', 0.62, 13900, 114, 5600, [7.3, 9.5], [0.00256, 0.00338], 30, 'Beech-birch-hickory', 'rrrr', 'slightly or nonresistant'],
  ['teak', 'teak', 'Tectona grandis', gravity12FromBasic(0.55), 1.55e6 * psi, 14600 * psi, 1000 * poundForce, [2.5, 5.8], [0.00101, 0.00186], 30, null, 'rmmm', 'very resistant', 'old growth'],
  ['ipe', 'ipe', 'Handroanthus spp. (formerly Tabebuia, lapacho group)', gravity12FromBasic(0.92), 3.14e6 * psi, 25400 * psi, 3680 * poundForce, [6.6, 8], [coefficientFromShrinkage({ shrinkage: 6.6 }), coefficientFromShrinkage({ shrinkage: 8 })], 30, null, 'mmdm', 'very resistant'],
];

const confidence: Readonly<Record<string, Confidence>> = { r: 'read', m: 'from memory', d: 'derived' };

/** Woods whose extractives stain and corrode plain and electroplated steel: cedars, redwood, oaks. From memory. */
const tannicWoods = /cedar|redwood|oak/;

/** Woods whose dust is known for more than being dust. From memory. */
const dusts: Readonly<Record<string, string>> = {
  'western-redcedar': 'fine dust is a known cause of asthma',
  'black-walnut': 'dust irritates skin and eyes',
  'white-oak': 'hardwood dust, listed as a cause of nasal cancer in long exposure',
  'northern-red-oak': 'hardwood dust, listed as a cause of nasal cancer in long exposure',
  'american-beech': 'hardwood dust, listed as a cause of nasal cancer in long exposure',
  teak: 'dust is a known skin sensitiser',
  ipe: 'fine yellow dust irritates skin and lungs',
};

const source =
  'Wood Handbook FPL-GTR-190 (2010): Tables 5-3a and 5-5b strength, 4-3 and 4-4 shrinkage, 13-5 coefficients, 14-1 decay';

function species(kind: Species['kind'], row: Row): Species {
  const [id, name, botanical, specificGravity12, modulus, strength, hardness, shrinkage, coefficients] = row;
  const [, , , , , , , , , fibreSaturation, fastenerGroup, marks, group, remark] = row;
  const mark = (column: number): Confidence => confidence[marks.charAt(column)] ?? 'from memory';
  const dust = dusts[id];
  return {
    id,
    name,
    botanical,
    kind,
    specificGravity12,
    modulus,
    strength,
    hardness,
    shrinkage: { radial: shrinkage[0], tangential: shrinkage[1] },
    coefficients: { radial: coefficients[0], tangential: coefficients[1] },
    fibreSaturation,
    decay: { group, ...(remark ? { remark } : {}) },
    tannic: tannicWoods.test(id),
    ...(dust ? { dust } : {}),
    ...(fastenerGroup ? { fastenerGravity: fastenerGravity[fastenerGroup], fastenerGroup } : {}),
    source,
    confidence: {
      strength: mark(0),
      // The imported woods have theirs on the green line alone, brought to 12 % by the handbook's equation.
      specificGravity12: id === 'teak' || id === 'ipe' ? 'derived' : 'read',
      shrinkage: mark(1),
      coefficients: mark(2),
      decay: mark(3),
    },
  };
}

/**
 * The wood table: clear straight-grained wood at 12 % moisture, averages and no design values. Strength varies about
 * 16 % and modulus about 22 % from piece to piece (coefficient of variation, Wood Handbook Table 5-6, from memory).
 */
export const woods: readonly Species[] = [
  ...softwoods.map((row) => species('softwood', row)),
  ...hardwoods.map((row) => species('hardwood', row)),
];

/** Names of the table's woods, in its order. */
export const woodNames: readonly string[] = woods.map((wood) => wood.name);

/** Other names in use, by `id`. Names that fit several woods of the table (cedar, pine, oak) are left out on purpose. */
const otherNames: Readonly<Record<string, readonly string[]>> = {
  'western-redcedar': ['redcedar', 'giant arborvitae', 'WRC'],
  'alaska-yellow-cedar': ['yellow-cedar', 'Alaska cedar', 'Nootka cypress', 'Alaskan yellow cedar', 'AYC'],
  'northern-white-cedar': ['eastern white-cedar', 'eastern arborvitae'],
  'atlantic-white-cedar': ['southern white-cedar'],
  'eastern-redcedar': ['aromatic cedar', 'aromatic redcedar'],
  'port-orford-cedar': ['Lawson cypress'],
  // Young growth, the weaker and the less durable, is what is sold.
  'redwood-young': ['redwood', 'coast redwood', 'second-growth redwood'],
  'redwood-old': ['old-growth redwood'],
  baldcypress: ['cypress', 'southern cypress'],
  'douglas-fir-coast': ['Douglas-fir', 'coast Douglas-fir'],
  'western-larch': ['larch'],
  'sitka-spruce': ['spruce, Sitka'],
  'loblolly-pine': ['southern pine', 'southern yellow pine'],
  'western-hemlock': ['hemlock'],
  'northern-red-oak': ['red oak'],
  'sugar-maple': ['hard maple', 'rock maple'],
  'red-maple': ['soft maple'],
  'white-ash': ['ash'],
  'black-cherry': ['cherry'],
  'black-walnut': ['walnut'],
  'yellow-poplar': ['tulip poplar', 'poplar', 'tulipwood'],
  'shagbark-hickory': ['hickory', 'true hickory'],
  'black-locust': ['locust', 'robinia'],
  'american-beech': ['beech'],
  'yellow-birch': ['birch'],
  ipe: ['ipé', 'lapacho'],
};

/** What is left of a name once case, accents, hyphens, commas and spaces are gone. */
function plain(name: string): string {
  return name
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z]/g, '');
}

const byName: ReadonlyMap<string, Species> = new Map(
  woods.flatMap((wood) =>
    [wood.id, wood.name, wood.botanical, ...(otherNames[wood.id] ?? [])].map((name) => [plain(name), wood] as const),
  ),
);

/**
 * The wood of that name in the table, by its name, id, botanical or another usual name, whatever the case, hyphens and
 * spaces; undefined if there is none or the name fits several (`cedar`, `oak`).
 *
 * @example woodNamed('Red Cedar')?.name // → 'western redcedar'
 */
export function woodNamed(name: string): Species | undefined {
  return byName.get(plain(name));
}
