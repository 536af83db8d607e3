/** Freezes plain data all the way down, so that nobody can change a catalogue for everybody else. */
export function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    const inner: readonly unknown[] = Object.values(value);
    for (const item of inner) deepFreeze(item);
    Object.freeze(value);
  }
  return value;
}
