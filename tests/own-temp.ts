/** What tests write to the folder for temporary files goes when they end. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export function setup(): () => void {
  const folder = mkdtempSync(path.join(tmpdir(), 'shapeflight-unit-'));
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
