/**
 * Where two answers differ, as paths with both values: everything but numbers has to be the same, numbers to within `tolerance`
 * (mm, degrees, shares), or as much of themselves where they are larger than 1,000.
 */
export function differences(one: unknown, other: unknown, tolerance: number, path = ''): readonly string[] {
  if (typeof one === 'number' && typeof other === 'number') {
    const near = Math.abs(one - other) <= tolerance * Math.max(1, Math.abs(one) / 1000);
    return near || Object.is(one, other) ? [] : [`${path}: ${one} and ${other}`];
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return one === other ? [] : [`${path}: ${JSON.stringify(one)} and ${JSON.stringify(other)}`];
  }
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differences(Reflect.get(one, key), Reflect.get(other, key), tolerance, `${path}.${key}`),
  );
}
