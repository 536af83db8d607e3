/** Sets of small numbers as bits, 32 a word. All of one kind have the same number of words. */
export type Bits = Int32Array;

export function emptyBits(size: number): Bits {
  return new Int32Array((size + 31) >> 5);
}

export function fullBits(size: number): Bits {
  const bits = emptyBits(size).fill(-1);
  if ((size & 31) !== 0) bits[bits.length - 1] = (1 << (size & 31)) - 1;
  return bits;
}

export function setBit(bits: Bits, i: number): void {
  bits[i >> 5] |= 1 << (i & 31);
}

export function clearBit(bits: Bits, i: number): void {
  bits[i >> 5] &= ~(1 << (i & 31));
}

export function hasBit(bits: Bits, i: number): boolean {
  return (bits[i >> 5] & (1 << (i & 31))) !== 0;
}

/** `into` becomes its union with `from`. */
export function addBits(into: Bits, from: Bits): void {
  for (let w = 0; w < into.length; w++) into[w] |= from[w];
}

/** `into` becomes what it has in common with `from`. */
export function keepBits(into: Bits, from: Bits): void {
  for (let w = 0; w < into.length; w++) into[w] &= from[w];
}

export function countWord(word: number): number {
  let w = word;
  w -= (w >>> 1) & 0x55555555;
  w = (w & 0x33333333) + ((w >>> 2) & 0x33333333);
  return Math.imul((w + (w >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

export function countBits(bits: Bits): number {
  let count = 0;
  for (let w = 0; w < bits.length; w++) count += countWord(bits[w]);
  return count;
}

/** How many both have. */
export function countCommon(a: Bits, b: Bits): number {
  let count = 0;
  for (let w = 0; w < a.length; w++) count += countWord(a[w] & b[w]);
  return count;
}

/** Whether they have one in common. */
export function meets(a: Bits, b: Bits): boolean {
  for (let w = 0; w < a.length; w++) if ((a[w] & b[w]) !== 0) return true;
  return false;
}

/** The numbers in a set, ascending. */
export function listBits(bits: Bits): number[] {
  const list: number[] = [];
  for (let w = 0; w < bits.length; w++) {
    for (let word = bits[w]; word !== 0; word &= word - 1) list.push(32 * w + 31 - Math.clz32(word & -word));
  }
  return list;
}
