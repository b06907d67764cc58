/** A place and the moisture that wood comes to outdoors, sheltered from rain and sun, January to December, percent. */
export interface Place {
  readonly name: string;
  readonly months: readonly number[];
}

/** How dry and how wet a place makes wood over the year, percent. */
export interface SiteMoisture {
  readonly place: string;
  readonly driest: number;
  readonly wettest: number;
  /** Months of these, 1 January to 12 December; the first if there are several. */
  readonly driestMonth: number;
  readonly wettestMonth: number;
}

// All from memory; take a single figure as ± 0.3. Source: Wood Handbook FPL-GTR-190, Table 13-1, after FPL-RN-0268.
const table: readonly (readonly [name: string, months: readonly number[]])[] = [
  ['Juneau, AK', [16.5, 16, 15.1, 13.9, 13.6, 13.9, 15.1, 16.5, 18.1, 18, 17.7, 18.1]],
  ['Mobile, AL', [13.8, 13.1, 13.3, 13.3, 13.4, 13.3, 14.2, 14.4, 13.9, 13, 13.7, 14]],
  ['Flagstaff, AZ', [11.8, 11.4, 10.8, 9.3, 8.8, 7.5, 9.7, 11.1, 10.3, 10.1, 10.8, 11.8]],
  ['Phoenix, AZ', [9.4, 8.4, 7.9, 6.1, 5.1, 4.6, 6.2, 6.9, 6.9, 7, 8.2, 9.5]],
  ['Little Rock, AR', [13.8, 13.2, 12.8, 13.1, 13.7, 13.1, 13.3, 13.5, 13.9, 13.1, 13.5, 13.9]],
  ['Fresno, CA', [16.4, 14.1, 12.6, 10.6, 9.1, 8.2, 7.8, 8.4, 9.2, 10.3, 13.4, 16.6]],
  ['Los Angeles, CA', [12.2, 13, 13.8, 13.8, 14.4, 14.8, 15, 15.1, 14.5, 13.8, 12.4, 12.1]],
  ['Denver, CO', [10.7, 10.5, 10.2, 9.6, 10.2, 9.6, 9.4, 9.6, 9.5, 9.5, 11, 11]],
  ['Washington, DC', [11.8, 11.5, 11.3, 11.1, 11.6, 11.7, 11.7, 12.3, 12.6, 12.5, 12.2, 12.2]],
  ['Miami, FL', [13.5, 13.1, 12.8, 12.3, 12.7, 14, 13.7, 14.1, 14.5, 13.5, 13.9, 13.4]],
  ['Atlanta, GA', [13.3, 12.3, 12, 11.8, 12.5, 13, 13.8, 14.2, 13.9, 13, 12.9, 13.2]],
  ['Honolulu, HI', [13.3, 12.8, 11.9, 11.3, 10.8, 10.6, 10.6, 10.7, 10.8, 11.3, 12.1, 12.9]],
  ['Boise, ID', [15.2, 13.5, 11.1, 10, 9.7, 9, 7.3, 7.3, 8.4, 10, 13.3, 15.2]],
  ['Chicago, IL', [14.2, 13.7, 13.4, 12.5, 12.2, 12.4, 12.8, 13.3, 13.3, 12.9, 14, 14.9]],
  ['Indianapolis, IN', [15.1, 14.6, 13.8, 12.8, 13, 12.8, 13.9, 14.5, 14.2, 13.7, 14.8, 15.7]],
  ['Des Moines, IA', [14, 13.9, 13.3, 12.6, 12.4, 12.6, 13.1, 13.4, 13.7, 12.7, 13.9, 14.9]],
  ['Wichita, KS', [13.8, 13.4, 12.4, 12.4, 13.2, 12.5, 11.5, 11.8, 12.6, 12.4, 13.2, 13.9]],
  ['Louisville, KY', [13.7, 13.3, 12.6, 12, 12.8, 13, 13.3, 13.7, 14.1, 13.3, 13.5, 13.9]],
  ['New Orleans, LA', [14.9, 14.3, 14, 14.2, 14.1, 14.6, 15.2, 15.3, 14.8, 14, 14.2, 15]],
  ['Portland, ME', [13.1, 12.7, 12.7, 12.1, 12.6, 13, 13, 13.4, 13.9, 13.8, 14, 13.5]],
  ['Boston, MA', [11.8, 11.6, 11.9, 11.7, 12.2, 12.1, 11.9, 12.5, 13.1, 12.8, 12.6, 12.2]],
  ['Minneapolis-St. Paul, MN', [13.7, 13.6, 13.3, 12, 11.9, 12.3, 12.5, 13.2, 13.8, 13.3, 14.3, 14.6]],
  ['Jackson, MS', [15.1, 14.4, 13.7, 13.8, 14.1, 13.9, 14.6, 14.6, 14.6, 14.1, 14.3, 14.9]],
  ['St. Louis, MO', [14.5, 14.1, 13.2, 12.4, 12.8, 12.6, 12.9, 13.3, 13.7, 13.1, 14, 14.9]],
  ['Missoula, MT', [16.7, 15.1, 12.8, 11.4, 11.6, 11.7, 10.1, 9.8, 11.3, 12.9, 16.2, 17.6]],
  ['Omaha, NE', [14, 13.8, 13, 12.1, 12.6, 12.9, 13.3, 13.8, 14, 13, 13.9, 14.8]],
  ['Las Vegas, NV', [8.5, 7.7, 7, 5.5, 5, 4, 4.5, 5.2, 5.3, 5.9, 7.2, 8.4]],
  ['Reno, NV', [12.3, 10.7, 9.7, 8.8, 8.8, 8.2, 7.7, 7.9, 8.4, 9.4, 10.9, 12.3]],
  ['New York, NY', [12.2, 11.9, 11.5, 11, 11.5, 11.8, 11.8, 12.4, 12.6, 12.3, 12.5, 12.3]],
  ['Raleigh, NC', [12.8, 12.1, 12.2, 11.7, 13.1, 13.4, 13.8, 14.5, 14.5, 13.7, 12.9, 12.8]],
  ['Fargo, ND', [14.2, 14.6, 15.2, 12.9, 11.9, 12.9, 13.2, 13.2, 13.7, 13.5, 15.2, 15.2]],
  ['Cleveland, OH', [14.6, 14.2, 13.7, 12.6, 12.7, 12.7, 12.8, 13.7, 13.8, 13.3, 13.8, 14.6]],
  ['Oklahoma City, OK', [13.2, 12.9, 12.2, 12.1, 13.4, 13.1, 11.7, 11.8, 12.9, 12.3, 12.8, 13.2]],
  ['Pendleton, OR', [15.8, 14, 11.6, 10.6, 9.9, 9.1, 7.4, 7.7, 8.8, 11, 14.6, 16.5]],
  ['Portland, OR', [16.5, 15.3, 14.2, 13.5, 13.1, 12.4, 11.7, 11.9, 12.6, 15, 16.8, 17.4]],
  ['Philadelphia, PA', [12.6, 11.9, 11.7, 11.2, 11.8, 11.9, 12.1, 12.4, 13, 13, 12.7, 12.7]],
  ['Charleston, SC', [13.3, 12.6, 12.5, 12.4, 12.8, 13.5, 14.1, 14.6, 14.5, 13.7, 13.2, 13.2]],
  ['Sioux Falls, SD', [14.2, 14.6, 14.2, 12.9, 12.6, 12.8, 12.6, 13.3, 13.6, 13, 14.6, 15.3]],
  ['Memphis, TN', [13.8, 13.1, 12.4, 12.2, 12.7, 12.8, 13, 13.1, 13.2, 12.5, 12.9, 13.6]],
  ['Dallas-Fort Worth, TX', [13.6, 13.1, 12.9, 13.2, 13.9, 13, 11.6, 11.7, 12.9, 12.8, 13.1, 13.5]],
  ['El Paso, TX', [9.6, 8.2, 7, 5.8, 6.1, 6.3, 8.3, 9.1, 9.3, 8.8, 9, 9.8]],
  ['Salt Lake City, UT', [14.6, 13.2, 11.1, 10, 9.4, 8.2, 7.1, 7.4, 8.5, 10.3, 12.8, 14.9]],
  ['Richmond, VA', [13.2, 12.5, 12, 11.3, 12.1, 12.4, 13, 13.7, 13.8, 13.5, 12.8, 13]],
  ['Seattle-Tacoma, WA', [15.6, 14.6, 15.4, 13.7, 13, 12.7, 12.2, 12.5, 13.5, 15.3, 16.3, 16.5]],
  ['Madison, WI', [14.5, 14.3, 14.1, 12.8, 12.5, 12.8, 13.4, 14.4, 14.9, 14.1, 15.2, 15.7]],
  ['Charleston, WV', [13.7, 13, 12.1, 11.4, 12.5, 13.3, 14.1, 14.3, 14, 13.6, 13, 13.5]],
  ['Cheyenne, WY', [10.2, 10.4, 10.7, 10.4, 10.8, 10.5, 9.9, 9.9, 9.7, 9.7, 10.6, 10.6]],
];

/** Monthly outdoor moisture of wood by place in the United States. */
export const places: readonly Place[] = table.map(([name, months]) => ({ name, months }));

/**
 * The driest and wettest that wood gets at a place, sheltered from rain and sun; fully exposed slats get wetter in rain
 * and drier in sun. Undefined if the table has no such place, or the city alone is given and is there twice.
 *
 * @param place As in the table or the city alone, whatever the case: `Boise, ID`, `boise`, `Seattle`.
 * @example siteMoisture('Portland, OR') // → driest 11.7 in July, wettest 17.4 in December
 */
export function siteMoisture(place: string): SiteMoisture | undefined {
  const wanted = plain(place);
  const exact = places.find(({ name }) => plain(name) === wanted);
  const inCity = places.filter(
    ({ name }) => plain(name.replace(/, ..$/, '')) === wanted || cities(name).includes(wanted),
  );
  const found = exact ?? (inCity.length === 1 ? inCity[0] : undefined);
  if (!found) return undefined;
  const driest = Math.min(...found.months);
  const wettest = Math.max(...found.months);
  return {
    place: found.name,
    driest,
    wettest,
    driestMonth: found.months.indexOf(driest) + 1,
    wettestMonth: found.months.indexOf(wettest) + 1,
  };
}

/** What is left of a name once case, spaces and punctuation are gone. */
function plain(name: string): string {
  return name.toLowerCase().replace(/[^a-z]/g, '');
}

/** The cities that share one row, such as Seattle-Tacoma. */
function cities(name: string): readonly string[] {
  return name.replace(/, ..$/, '').split('-').map(plain);
}
