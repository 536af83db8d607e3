/** Text from the bytes of a file, or a sentence that says why they are none. */
export type TextRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly message: string };

/** Reads UTF-8, with a byte order mark or without, and UTF-16 with one, as some shells write it. */
export function decodeText(bytes: Uint8Array): TextRead {
  const [first, second] = bytes;
  const encoding =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
  try {
    return { ok: true, text: new TextDecoder(encoding, { fatal: true }).decode(bytes) };
  } catch {
    return { ok: false, message: 'it is not text in UTF-8; save it again as UTF-8.' };
  }
}
