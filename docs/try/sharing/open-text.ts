import { isObject, type Json } from '../document/json.js';

export type Opened =
  | { readonly ok: true; readonly input: Json }
  | {
      readonly ok: false;
      readonly why:
        | 'too-large'
        | 'not-json'
        | 'not-an-input'
        | 'damaged-link'
        | 'unknown-link'
        | 'cannot-inflate';
    };

/** Deeper than any input goes; what is nested more is nobody's room. */
const DEPTH = 32;

/** The input in a text that came from anywhere. Whether it is a good one is asked later; here it only has to be plain data of a bearable size. */
export function openText(text: string, most: number): Opened {
  if (text.length > most) return { ok: false, why: 'too-large' };
  if (deepest(text) > DEPTH) return { ok: false, why: 'not-an-input' };
  try {
    const input: Json = JSON.parse(text.replace(/^\ufeff/, ''));
    return isObject(input) ? { ok: true, input } : { ok: false, why: 'not-an-input' };
  } catch {
    return { ok: false, why: 'not-json' };
  }
}

/** How deep brackets outside of strings are nested. */
function deepest(text: string): number {
  let depth = 0;
  let most = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i];
    if (inString) {
      if (letter === '\\') i++;
      else if (letter === '"') inString = false;
    } else if (letter === '"') inString = true;
    else if (letter === '[' || letter === '{') most = Math.max(most, ++depth);
    else if (letter === ']' || letter === '}') depth--;
  }
  return most;
}
