/** The text of a program for a worker: a file bundled by `build.ts` into one script. */
declare module 'worker:*' {
  const source: string;
  export default source;
}
