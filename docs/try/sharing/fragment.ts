import type { Json } from '../document/json.js';
import { type Opened, openText } from './open-text.js';

/**
 * A whole input in the fragment of a link: `#room=1z.` and the deflated JSON in base64url, or `#room=1p.` and the JSON itself where
 * the browser cannot deflate. The number is the version of this form.
 */
const KEY = 'room=';
const DEFLATED = '1z.';
const PLAIN = '1p.';

/** Longest fragment that is read, characters, and longest text that may come of it, bytes: a small link can unfold to a very large text. */
export const LIMITS = { fragment: 100_000, text: 500_000 } as const;

export async function toFragment(input: Json): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(input));
  if (typeof CompressionStream === 'undefined') return `#${KEY}${PLAIN}${toBase64url(bytes)}`;
  const deflated = await through(bytes, new CompressionStream('deflate'), Number.POSITIVE_INFINITY);
  return `#${KEY}${DEFLATED}${toBase64url(deflated ?? new Uint8Array())}`;
}

/** What a fragment holds; null where it is none of ours, such as that of a heading. Never throws, whatever the fragment. */
export async function fromFragment(fragment: string): Promise<Opened | null> {
  const text = fragment.replace(/^#/, '');
  if (!text.startsWith(KEY)) return null;
  if (text.length > LIMITS.fragment) return { ok: false, why: 'too-large' };
  const content = text.slice(KEY.length);
  const bytes = fromBase64url(content.slice(DEFLATED.length));
  if (bytes === null) return { ok: false, why: 'damaged-link' };
  if (content.startsWith(PLAIN)) return decoded(bytes);
  if (!content.startsWith(DEFLATED)) return { ok: false, why: 'unknown-link' };
  if (typeof DecompressionStream === 'undefined') return { ok: false, why: 'cannot-inflate' };
  try {
    const inflated = await through(bytes, new DecompressionStream('deflate'), LIMITS.text);
    return inflated === null ? { ok: false, why: 'too-large' } : decoded(inflated);
  } catch {
    return { ok: false, why: 'damaged-link' };
  }
}

function decoded(bytes: Uint8Array<ArrayBuffer>): Opened {
  try {
    return openText(new TextDecoder('utf-8', { fatal: true }).decode(bytes), LIMITS.text);
  } catch {
    return { ok: false, why: 'damaged-link' };
  }
}

/** All that comes out of a stream; null once it is more than `most` bytes. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const writer = stream.writable.getWriter();
  // What goes wrong in writing comes out in reading too, where it is caught.
  writer.write(bytes).catch(() => undefined);
  writer.close().catch(() => undefined);
  const reader = stream.readable.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    chunks.push(value);
    length += value.length;
    if (length > most) {
      reader.cancel().catch(() => undefined);
      return null;
    }
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

function toBase64url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]*$/.test(text)) return null;
  try {
    const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}
