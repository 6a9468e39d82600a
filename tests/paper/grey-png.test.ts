// A picture as PNG in bands: what another reader makes of it is the picture, whatever the bands; none is larger than a task may draw.
import { crc32, inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { BAND_PX, bandsOf, greyPng } from '../../src/paper/grey-png.ts';

const grey = (x: number, y: number): number => (7 * x + 13 * y + ((x * y) % 31)) & 255;

interface Chunk {
  readonly name: string;
  readonly data: Buffer;
}

function readChunks(png: Buffer): Chunk[] {
  expect(png.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
  const chunks: Chunk[] = [];
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    const body = png.subarray(at + 4, at + 8 + length);
    expect(png.readUInt32BE(at + 8 + length)).toBe(crc32(body));
    chunks.push({ name: body.subarray(0, 4).toString('latin1'), data: body.subarray(4) });
    at += 12 + length;
  }
  return chunks;
}

test('a picture of several bands is read back as it was, with its size on paper', async () => {
  const size = { width: 1500, height: 1001, dpi: 300 };
  const asked: number[] = [];
  const blob = await greyPng(size, async (top, rows) => {
    asked.push(rows);
    return Uint8Array.from({ length: size.width * rows }, (_, i) =>
      grey(i % size.width, top + Math.floor(i / size.width)),
    );
  });
  expect(asked.length).toBeGreaterThan(2);
  const chunks = readChunks(Buffer.from(await blob.arrayBuffer()));
  expect(chunks[0].name).toBe('IHDR');
  expect([...chunks[0].data]).toEqual([0, 0, 5, 220, 0, 0, 3, 233, 8, 0, 0, 0, 0]);
  expect(chunks.at(-1)?.name).toBe('IEND');
  // px a metre of 300 to the inch
  expect(chunks[1].data.readUInt32BE(0)).toBe(11811);
  const rows = inflateSync(Buffer.concat(chunks.filter(({ name }) => name === 'IDAT').map(({ data }) => data)));
  const above = new Uint8Array(size.width);
  let wrong = 0;
  for (let y = 0; y < size.height; y++) {
    const at = y * (size.width + 1);
    expect(rows[at]).toBe(2);
    for (let x = 0; x < size.width; x++) {
      above[x] += rows[at + 1 + x];
      if (above[x] !== grey(x, y)) wrong++;
    }
  }
  expect(wrong).toBe(0);
});

test.each([
  [14_173, 6_000],
  [2_480, 1_748],
  [708, 300],
  [700_000, 3],
])('bands of %d x %d are all of it, and no larger than one may be', (width, height) => {
  const bands = bandsOf({ width, height });
  expect(bands.reduce((all, rows) => all + rows, 0)).toBe(height);
  for (const rows of bands) expect(rows === 1 || rows * width <= BAND_PX).toBe(true);
});
