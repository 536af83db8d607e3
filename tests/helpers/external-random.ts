/** Numbers in [0, 1) that are the same on every run: a multiplicative congruential generator (Park and Miller's, from memory). */
export function seeded(seed: number): () => number {
  let state = (Math.abs(Math.trunc(seed)) % 2147483646) + 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return (state - 1) / 2147483646;
  };
}
