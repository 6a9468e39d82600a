/**
 * A picture in greys as PNG (ISO/IEC 15948), taken band by band: no task draws more than a band, and no canvas has to be as large as the picture.
 * Eight bits a pixel, each row as its difference from the one above, compressed by the platform's own stream; with its size on paper.
 */

import { calcCrc } from '../../sim/math/crc.ts';

/** px of a band */
export const BAND_PX = 600_000;

interface GreySize {
  readonly width: number;
  readonly height: number;
  readonly dpi: number;
}

/** Rows of each band. */
export function bandsOf({ width, height }: Pick<GreySize, 'width' | 'height'>): number[] {
  const most = Math.max(1, Math.floor(BAND_PX / width));
  const bands: number[] = [];
  for (let y = 0; y < height; y += most) bands.push(Math.min(most, height - y));
  return bands;
}

/** `readBand`: greys of rows from `top` on, width x rows */
export async function greyPng(
  size: GreySize,
  readBand: (top: number, rows: number) => Promise<Uint8Array>,
): Promise<Blob> {
  const { width, height, dpi } = size;
  const stream = new CompressionStream('deflate');
  const parts: Uint8Array<ArrayBuffer>[] = [
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', [...four(width), ...four(height), 8, 0, 0, 0, 0]),
    chunk('pHYs', [...four(Math.round(dpi / 0.0254)), ...four(Math.round(dpi / 0.0254)), 1]),
  ];
  const packed = collect(stream.readable, parts);
  const writer = stream.writable.getWriter();
  let above = new Uint8Array(width);
  let top = 0;
  for (const rows of bandsOf(size)) {
    const band = await readBand(top, rows);
    const bytes = new Uint8Array((width + 1) * rows);
    for (let y = 0; y < rows; y++) {
      const row = band.subarray(width * y, width * (y + 1));
      const at = (width + 1) * y;
      bytes[at] = UP;
      for (let x = 0; x < width; x++) bytes[at + 1 + x] = row[x] - above[x];
      above = row.slice();
    }
    await writer.write(bytes);
    top += rows;
  }
  await writer.close();
  await packed;
  return new Blob([...parts, chunk('IEND', [])], { type: 'image/png' });
}

/** the filter of a row: against the row above */
const UP = 2;

async function collect(readable: ReadableStream<Uint8Array>, parts: Uint8Array<ArrayBuffer>[]): Promise<void> {
  const reader = readable.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    parts.push(chunk('IDAT', value));
  }
}

const four = (n: number): number[] => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];

function chunk(name: string, data: ArrayLike<number>): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(12 + data.length);
  bytes.set(four(data.length));
  bytes.set(
    [...name].map((letter) => letter.charCodeAt(0)),
    4,
  );
  bytes.set(data, 8);
  bytes.set(four(calcCrc(bytes.subarray(4, 8 + data.length))), 8 + data.length);
  return bytes;
}
