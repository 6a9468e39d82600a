// SHA-256 against the one of Node, and against the examples of the standard.
import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { sha256 } from '../../sim/math/sha256.ts';

const ofText = (text: string): string => sha256(new TextEncoder().encode(text));

it('gives the examples of FIPS 180-4', () => {
  expect(ofText('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(ofText('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  );
});

it('is that of Node for every length about the edges of its blocks', () => {
  for (let n = 0; n < 300; n++) {
    const bytes = Uint8Array.from({ length: n }, (_, i) => (37 * i * i + 11 * n) % 256);
    expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
  }
  const long = Uint8Array.from({ length: 100_003 }, (_, i) => (i * i) % 251);
  expect(sha256(long)).toBe(createHash('sha256').update(long).digest('hex'));
});
