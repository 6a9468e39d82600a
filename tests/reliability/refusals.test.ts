// What is wrong in a file is one line: which file, which field as the file has it, what it holds, what is allowed; the same on page and shell.
import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FieldError, textOfBytes } from '../../sim/index.ts';
import { wordFault } from '../../src/app/say/fault-words.ts';
import { makeFolder, run } from '../cli/run.ts';
import { kindOf, readers, readJson, textOf } from './refusal-bases.ts';
import { refusals } from './refusals.ts';

/** Words of the program and its packages, values that nobody typed, and letters that are not seen. */
const OURS =
  /native code|\[object|undefined is|\bNaN is|\bInfinity is|Expected |Unexpected|received|Invalid |\ba [aeio]|\ban [bcdfgjkmnpqrstvwz]|is not a function|[^\P{C}\n]/u;

const shown = JSON.stringify;

function faultOf(work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    return error;
  }
}

describe.each(refusals.map((one) => ({ name: `${one[0]} ${one[1]} = ${String(shown(one[2])).slice(0, 60)}`, one })))(
  '$name',
  ({ one }) => {
    const [base, , , said] = one;
    const reader = readers[kindOf(base)];
    const text = textOf(one);
    const fault = faultOf(() => reader.page(readJson(textOfBytes(Buffer.from(text)))));
    test('for the page', () => {
      expect(fault).toBeInstanceOf(FieldError);
      const { message, field, allowed } = fault as FieldError;
      expect(message.slice(0, said.length)).toBe(said);
      expect(message).toMatch(field === 'file' ? /^file: / : /^[a-zA-Z]/);
      expect(`${message} ${field}`).not.toMatch(OURS);
      const sentence = wordFault(fault);
      expect(sentence).not.toMatch(OURS);
      expect(sentence).toMatch(/^[A-Z“]/);
      expect(sentence.length).toBeGreaterThan(20);
      if (!(fault as FieldError).detail && field !== 'format' && field !== 'athlete.ref')
        expect(sentence).toContain(allowed);
    });
    test('for the shell', async () => {
      const made = makeFolder();
      const file = made.at('given.json');
      const argv = reader.shell(file);
      if (argv.length === 0) return;
      writeFileSync(file, text);
      const { code, out, err } = await run(...argv);
      expect([code, out]).toEqual([2, '']);
      const line = (fault as FieldError).message.replace(/^file: /, '');
      expect(err.endsWith('\n') && err.indexOf('\n') === err.length - 1).toBe(true);
      expect(err).not.toMatch(OURS);
      if (argv[0] !== 'class') expect(err).toBe(`shapeflight: ${file}: ${line}\n`.slice(0, 1014));
      else expect(err).toContain('given.json: ');
    });
  },
);
