/** The input as the page holds it: plain data, never changed in place, good or not. */

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

/** Keys and list indices from the whole to a part. */
export type Path = readonly (string | number)[];

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}

/** `room.outline[0][1]`, as the library writes it in its problems. */
export function pathText(path: Path): string {
  return path
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`))
    .join('');
}

export function getAt(whole: Json, path: Path): Json | undefined {
  let value: Json | undefined = whole;
  for (const step of path) {
    if (typeof step === 'number') value = isList(value) ? value[step] : undefined;
    else value = isObject(value) && Object.hasOwn(value, step) ? value[step] : undefined;
  }
  return value;
}

/** With another value at the path. What stands in the way, and is no list or object as the path has it, is replaced. */
export function setAt(whole: Json | undefined, path: Path, value: Json): Json {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list = isList(whole) ? [...whole] : [];
    while (list.length < step) list.push('');
    list[step] = setAt(list[step], rest, value);
    return list;
  }
  const object = isObject(whole) ? whole : {};
  const old = Object.hasOwn(object, step) ? object[step] : undefined;
  return { ...object, [step]: setAt(old, rest, value) };
}

/** Without the key or the list's item at the path; an object that has nothing left goes with it, unless it is an item of a list. */
export function removeAt(whole: Json, path: Path): Json {
  const [last] = path.slice(-1);
  const parentPath = path.slice(0, -1);
  const parent = getAt(whole, parentPath);
  if (typeof last === 'number') {
    return isList(parent)
      ? setAt(
          whole,
          parentPath,
          parent.filter((_, i) => i !== last),
        )
      : whole;
  }
  if (last === undefined || !isObject(parent) || !Object.hasOwn(parent, last)) return whole;
  const left = Object.fromEntries(Object.entries(parent).filter(([key]) => key !== last));
  const inObject = typeof parentPath.at(-1) === 'string';
  if (Object.keys(left).length === 0 && inObject) return removeAt(whole, parentPath);
  return setAt(whole, parentPath, left);
}

export function insertAt(whole: Json, list: Path, index: number, item: Json): Json {
  const old = getAt(whole, list);
  const items = isList(old) ? old : [];
  return setAt(whole, list, [...items.slice(0, index), item, ...items.slice(index)]);
}

/** Paths of all values that are neither lists nor objects, and of empty lists and objects. */
export function leaves(whole: Json, path: Path = []): Path[] {
  if (isList(whole) && whole.length > 0) return whole.flatMap((item, i) => leaves(item, [...path, i]));
  if (isObject(whole) && Object.keys(whole).length > 0)
    return Object.entries(whole).flatMap(([key, value]) => leaves(value, [...path, key]));
  return [path];
}
