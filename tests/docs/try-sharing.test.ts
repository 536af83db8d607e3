import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { START } from '../../docs/try/document/start.js';
import { fromFragment, LIMITS, toFragment } from '../../docs/try/sharing/fragment.js';
import { openText } from '../../docs/try/sharing/open-text.js';
import { ANYTHING, INPUT } from './try-inputs.js';

/** A room in the fragment of a link, and what strangers may write there. */

const linkTo = (bytes: Uint8Array): string => `#room=1z.${Buffer.from(bytes).toString('base64url')}`;
const linkWith = (text: string): string => `#room=1p.${Buffer.from(text).toString('base64url')}`;

describe('the link', () => {
  it('holds the whole input', async () => {
    await fc.assert(
      fc.asyncProperty(INPUT, async (input) => {
        expect(await fromFragment(await toFragment(input))).toEqual({ ok: true, input });
      }),
      { seed: 1711, numRuns: 100 },
    );
  });

  it('is plain text where nothing can be deflated, and read all the same', async () => {
    expect(await fromFragment(linkWith(JSON.stringify(START)))).toEqual({ ok: true, input: START });
  });

  it('needs no letter that a message or an address would change', async () => {
    const fragment = await toFragment(START);
    expect(fragment).toMatch(/^#room=1z\.[\w-]+$/);
    // Deflated or not: readings repeat themselves.
    expect(fragment.length).toBeLessThan(JSON.stringify(START).length);
  });
});

describe('hostile links', () => {
  it('leaves fragments alone that are not its own', async () => {
    for (const fragment of ['', '#', '#answer', '#f:room.outline[0][0]', '#Room=1z.x'])
      expect(await fromFragment(fragment)).toBeNull();
  });

  it('never throws, and takes nothing but an object', async () => {
    const fragments = fc.oneof(
      fc.string({ maxLength: 80 }).map((text) => `#room=${text}`),
      fc.string({ maxLength: 80 }).map((text) => `#room=1z.${text}`),
      fc.base64String({ maxLength: 80 }).map((text) => `#room=1z.${text.replace(/=+$/, '')}`),
      fc.uint8Array({ maxLength: 80 }).map(linkTo),
      fc.uint8Array({ maxLength: 80 }).map((bytes) => linkTo(deflateSync(bytes))),
      fc.string({ maxLength: 80 }).map(linkWith),
      ANYTHING.map((value) => linkWith(JSON.stringify(value))),
    );
    await fc.assert(
      fc.asyncProperty(fragments, async (fragment) => {
        const opened = await fromFragment(fragment);
        if (opened?.ok === true) expect(opened.input).toBeTypeOf('object');
      }),
      { seed: 1712, numRuns: 400 },
    );
  });

  it('notices a link that was cut short or changed', async () => {
    const fragment = await toFragment(START);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: fragment.length - 12 }), async (cut) => {
        expect(await fromFragment(fragment.slice(0, -cut))).toMatchObject({ ok: false });
      }),
      { seed: 1713, numRuns: 60 },
    );
    const at = fragment.length - 30;
    const other = fragment[at] === 'A' ? 'B' : 'A';
    const changed = fragment.slice(0, at) + other + fragment.slice(at + 1);
    expect(await fromFragment(changed)).toMatchObject({ ok: false });
  });

  it('stops unfolding a small link to a very large text', async () => {
    const bomb = deflateSync(Buffer.alloc(50_000_000, ' '));
    expect(bomb.length).toBeLessThan(LIMITS.fragment / 2);
    expect(await fromFragment(linkTo(bomb))).toEqual({ ok: false, why: 'too-large' });
  });

  it('tells what is wrong', async () => {
    const cases: readonly (readonly [string, string])[] = [
      [`#room=1z.${'A'.repeat(LIMITS.fragment)}`, 'too-large'],
      ['#room=2z.AAAA', 'unknown-link'],
      ['#room=1z.%', 'damaged-link'],
      ['#room=1z.AAAA', 'damaged-link'],
      [linkTo(deflateSync(Buffer.from([0xff, 0xfe]))), 'damaged-link'],
      [linkWith('{'), 'not-json'],
      [linkWith('[1]'), 'not-an-input'],
      [linkWith('null'), 'not-an-input'],
      [linkWith(`{"a":${'['.repeat(5000)}${']'.repeat(5000)}}`), 'not-an-input'],
    ];
    for (const [fragment, why] of cases) expect(await fromFragment(fragment)).toEqual({ ok: false, why });
  });
});

describe('the file', () => {
  it('is read as it was written', () => {
    fc.assert(
      fc.property(INPUT, (input) => {
        expect(openText(`${JSON.stringify(input, null, 2)}\n`, LIMITS.text)).toEqual({ ok: true, input });
      }),
      { seed: 1714, numRuns: 100 },
    );
  });

  it('may begin with a byte order mark, and may hold brackets in its words', () => {
    const input = { room: { name: `[[["\\"${'['.repeat(200)}` } };
    expect(openText(`\ufeff${JSON.stringify(input)}`, LIMITS.text)).toEqual({ ok: true, input });
  });
});
