// Runs the command line in this process and keeps what it says.
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { main } from '../../src/cli/main.ts';
import { stillFile } from '../search/still.ts';

export interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function run(...argv: string[]): Promise<Said> {
  let out = '';
  let err = '';
  const code = await main(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}

/** A folder of one's own, with files in it. */
export function makeFolder(files: Record<string, unknown> = {}) {
  const folder = mkdtempSync(path.join(tmpdir(), 'shapeflight-cli-'));
  for (const [name, content] of Object.entries(files))
    writeFileSync(path.join(folder, name), typeof content === 'string' ? content : JSON.stringify(content, null, 2));
  return {
    folder,
    at: (name: string): string => path.join(folder, name),
    read: (name: string): string => readFileSync(path.join(folder, name), 'utf8'),
    /** a CSV without the lines that say where it is from */
    rows: (name: string): string => readFileSync(path.join(folder, name), 'utf8').replace(/^(?:#.*\n)+/, ''),
    list: (): string[] => readdirSync(folder).sort(),
  };
}

/** An MJCF model without what says where it is from. */
export const bareModel = (xml: string): string => xml.replace(/ {2}<custom>[\s\S]*<\/custom>\n/, '');

/** A stretched body that only turns: quick, and its margin is known. */
export const still = stillFile();
