/** CRC-32 (ISO 3309), a byte at a time: what has been read so far has a value at every letter. */
const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

export const CRC_START = 0xffffffff;
export const crcStep = (crc: number, byte: number): number => (TABLE[(crc ^ byte) & 255] ^ (crc >>> 8)) >>> 0;

export function calcCrc(bytes: Uint8Array): number {
  let crc = CRC_START;
  for (const byte of bytes) crc = crcStep(crc, byte);
  return ~crc >>> 0;
}
