/** SHA-256 of bytes, at once: what the browser has is a promise, and only on a page opened by https or from the disk (docs/decisions/0043-where-a-result-is-from.md). */
import { sha256 as hash } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** As 64 hexadecimal digits. */
export const sha256 = (bytes: Uint8Array): string => bytesToHex(hash(bytes));
