/** Still pictures by their first bytes: what a file is called says little. */

const text = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));

/** Brands of still pictures in the box that film clips have too. */
const STILL_BRANDS: Readonly<Record<string, string>> = {
  avif: 'avif',
  heic: 'heic',
  heix: 'heic',
  mif1: 'heic',
};

export function findStillKind(head: Uint8Array): string | undefined {
  if (text(head, 0, 8) === '\x89PNG\r\n\x1a\n') return 'png';
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return 'jpeg';
  if (/^GIF8[79]a/.test(text(head, 0, 6))) return 'gif';
  if (text(head, 0, 4) === 'RIFF' && text(head, 8, 12) === 'WEBP') return 'webp';
  if (text(head, 0, 2) === 'BM' && head[6] === 0 && head[7] === 0) return 'bmp';
  return text(head, 4, 8) === 'ftyp' ? STILL_BRANDS[text(head, 8, 12)] : undefined;
}
