/** How many numbers in a row are counted up before they are told by the first and the last. */
const COUNTED = 4;

/** Several panels named together: `Left, Middle and Right`; those that differ by a number alone as `Bay 1, 2 and 4`. */
export function panelNames(names: readonly string[]): string {
  const numbered = names.map((name) => /^(.*\S)\s+(\d+)$/.exec(name));
  const [stem] = numbered.map((found) => found?.[1]);
  if (names.length < 2 || stem === undefined || numbered.some((found) => found?.[1] !== stem)) return counted(names);
  const numbers = numbered.map((found) => found?.[2] as string);
  const [first, last] = [Number(numbers[0]), Number(numbers.at(-1))];
  const isRun = numbers.length > COUNTED && numbers.every((number, i) => Number(number) === first + i);
  return `${stem} ${isRun ? `${first} to ${last}` : counted(numbers)}`;
}

function counted(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
