// A command of the shell with a damaged file, from its call to its last line: what it prints, what it writes, how it ends.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { main } from '../../../src/cli/main.ts';
import type { Input } from './kind.ts';
import { checkSentence, hold } from './law.ts';

const [FINE, BAD_INPUT, NOTHING_FLOWN] = [0, 2, 3];
/** What no output has, but where the file itself does. */
const NO_WORDS = /\bundefined\b|\[object |\bNaN\b|\bInfinity\b/;

/** One in so many files goes through one of the calls, by its own bytes. */
export async function checkSomeShell(
  calls: readonly (readonly string[])[],
  oneIn: number,
  input: Input,
): Promise<void> {
  const call = calls[hashOf(input.bytes) % (oneIn * calls.length)];
  if (call) await checkShell(call, input);
}
const hashOf = (bytes: Uint8Array): number => bytes.reduce((h, b) => (Math.imul(h, 31) + b) >>> 0, 7);

/** `call`: with IN for the file and OUT for what is written. */
export async function checkShell(call: readonly string[], { file, bytes }: Input): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), 'shapeflight-corpus-'));
  try {
    const [given, out] = [
      path.join(folder, file),
      path.join(folder, `out${path.extname(call.at(-1) ?? '') || '.txt'}`),
    ];
    writeFileSync(given, bytes);
    const said = { out: '', err: '' };
    const streams = {
      out: (text: string) => {
        said.out += text;
      },
      err: (text: string) => {
        said.err += text;
      },
    };
    const code = await main(
      call.map((word) => (word === 'IN' ? given : word.startsWith('OUT') ? out : word)),
      streams,
    );
    const input = new TextDecoder('latin1').decode(bytes);
    hold([FINE, BAD_INPUT, NOTHING_FLOWN].includes(code), `${call[0]} ends with ${code}: ${said.err.slice(0, 500)}`);
    if (code !== FINE) {
      hold(said.out === '' && !existsSync(out), `${call[0]} is refused, and writes`);
      hold(said.err.endsWith('\n'), 'the refusal does not end its line');
      checkSentence(said.err.replaceAll(folder, '').slice(0, -1), input);
      return;
    }
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    hold(!/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/.test(said.out), `a control character on the shell: ${call[0]}`);
    const written = existsSync(out) ? readFileSync(out, 'utf8') : '';
    for (const text of [said.out, written]) {
      const found = NO_WORDS.exec(text)?.[0];
      hold(
        found === undefined || input.includes(found),
        `"${found}" in what ${call[0]} says: ${text.slice(Math.max(0, (NO_WORDS.exec(text)?.index ?? 0) - 80), (NO_WORDS.exec(text)?.index ?? 0) + 80)}`,
      );
    }
    checkWritten(out, written);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function checkWritten(out: string, text: string): void {
  if (text === '') return;
  if (out.endsWith('.json')) JSON.parse(text);
  if (!/\.(svg|html)$/.test(out)) return;
  hold(!/<(script|iframe|object|embed|foreignObject)/i.test(text), 'a script in what is written');
  hold(
    !/\son[a-z]+\s*=/i.test(text.replace(/>[^<]*</g, '><').replace(/"[^"]*"/g, '""')),
    'a handler in what is written',
  );
}
