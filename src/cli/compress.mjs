// Beside each text file of a build one by gzip and one by brotli, for servers that send files as they lie there.
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const text = /\.(?:css|html|js|json|svg|txt|webmanifest)$/;
/** bytes; less is one packet anyway */
const least = 1400;
/** of 11: a step more takes many times as long for 3 % */
const quality = 9;

export function compressFiles(dir) {
  for (const entry of readdirSync(dir, { recursive: true, withFileTypes: true })) {
    const file = path.join(entry.parentPath, entry.name);
    if (!entry.isFile() || !text.test(entry.name) || statSync(file).size < least) continue;
    const whole = readFileSync(file);
    writeFileSync(`${file}.gz`, gzipSync(whole, { level: 9 }));
    writeFileSync(`${file}.br`, brotliCompressSync(whole, { params: { [constants.BROTLI_PARAM_QUALITY]: quality } }));
  }
}
